package org.calamus.boot;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.calamus.port.Devices;
import org.calamus.port.RecordStore;
import org.calamus.port.Screen;
import org.calamus.port.SettingsException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command line. */
@Command(
    name = "calamus",
    version = "Calamus 0.1.0",
    mixinStandardHelpOptions = true,
    description = "A hands-free capture console for a licensed bird bander.",
    footer = {
      "",
      "Exit codes: 0 done, 1 failure, 2 wrong use, 3 something needed is missing.",
      "The bird's welfare comes first. Band only under your permit and your scheme's rules."
    },
    subcommands = {
      Cli.Demo.class,
      Cli.Capture.class,
      Cli.Check.class,
      Cli.Microphone.class,
      Cli.Replay.class
    })
public final class Cli implements Callable<Integer> {

  @Spec private CommandLine.Model.CommandSpec spec;

  private Cli() {}

  /**
   * Runs the command line.
   *
   * @param args the arguments
   * @return the exit code
   */
  public static int run(String[] args) {
    CommandLine line = lineOf(new Cli());
    line.setErr(new PrintWriter(System.err, true));
    line.setParameterExceptionHandler(Cli::refuse);
    line.setExecutionExceptionHandler(Cli::explain);
    return line.execute(args);
  }

  /** A command line that takes its values in capitals and small letters alike. */
  static CommandLine lineOf(Object command) {
    return new CommandLine(command).setCaseInsensitiveEnumValuesAllowed(true);
  }

  /** What was typed wrong is said alone: a screenful of options would push it out of sight. */
  private static int refuse(CommandLine.ParameterException wrong, String[] arguments) {
    CommandLine line = wrong.getCommandLine();
    PrintWriter err = line.getErr();
    err.println(wrong.getMessage());
    boolean isGuessed = CommandLine.UnmatchedArgumentException.printSuggestions(wrong, err);
    if (line.getSubcommands().isEmpty() || isGuessed) {
      err.println(line.getCommandSpec().qualifiedName() + " --help lists what can be given.");
    } else {
      line.usage(err); // the commands are few enough to be seen with what was wrong
    }
    return ExitCode.WRONG_USE;
  }

  private static int explain(
      Exception failure, CommandLine line, CommandLine.ParseResult arguments) {
    if (failure instanceof Halt halt) {
      return end(line, halt.getMessage(), halt.exitCode());
    }
    if (failure instanceof SettingsException || failure instanceof Devices.DeviceException) {
      return end(line, failure.getMessage(), ExitCode.WRONG_USE);
    }
    if (failure instanceof RecordStore.StoreException) {
      return end(line, failure.getMessage(), ExitCode.FAILURE);
    }
    if (failure instanceof Screen.ScreenException) {
      return end(line, failure.getMessage(), ExitCode.MISSING);
    }
    Path log = ((WithOptions) line.getCommand()).folders().log();
    return end(line, Log.keep(failure, log), ExitCode.FAILURE);
  }

  /**
   * Says the last sentence, on standard output whatever went wrong: the ears may have moved
   * standard error to the log for good by then, and nobody would see why nothing opened.
   */
  private static int end(CommandLine line, String sentence, int exitCode) {
    line.getOut().println(sentence);
    return exitCode;
  }

  /** What every command has. */
  abstract static class WithOptions implements Callable<Integer> {

    /** The options that every command has. */
    @Mixin protected Options options;

    /** Where things are kept. */
    Folders folders() {
      return options.folders();
    }
  }

  @Override
  public Integer call() {
    spec.commandLine().usage(spec.commandLine().getOut());
    return ExitCode.WRONG_USE;
  }

  /** The demonstration. */
  @Command(
      name = "demo",
      mixinStandardHelpOptions = true,
      description = "Shows an invented evening at Fenwick Marsh, from recordings.")
  static final class Demo extends WithOptions {

    @Option(
        names = "--fast",
        description = "As fast as the computer can, without readback: a few seconds.")
    private boolean isFast;

    @Override
    public Integer call() throws Exception {
      return new DemoCommand(options, isFast).run();
    }
  }

  /** The live console. */
  @Command(
      name = "capture",
      mixinStandardHelpOptions = true,
      description = "The live console: microphone, readback, instruments, keypad.")
  static final class Capture extends WithOptions {

    @Mixin private CaptureOptions capture;

    @Override
    public Integer call() throws Exception {
      return new CaptureCommand(options, capture).run();
    }
  }

  /** The check of what is there. */
  @Command(
      name = "check",
      mixinStandardHelpOptions = true,
      description = "Says what was found: model, vocabulary, microphone, speaker, ports, database.")
  static final class Check extends WithOptions {

    @Override
    public Integer call() throws Exception {
      return new CheckCommand(options).run();
    }
  }

  /** The trial of the microphone. */
  @Command(
      name = "microphone",
      mixinStandardHelpOptions = true,
      description = "Tries the microphone at its place: noise, level, and ten things to say.")
  static final class Microphone extends WithOptions {

    @Option(
        names = "--wav",
        paramLabel = "FILE",
        description = "Hears a recording: three seconds of the place, then what would be asked.")
    private Path recording;

    @Override
    public Integer call() throws Exception {
      return new MicrophoneCommand(options, Optional.ofNullable(recording)).run();
    }
  }

  /** Kept utterances, heard anew. */
  @Command(
      name = "replay",
      mixinStandardHelpOptions = true,
      description = {
        "Hears kept utterances anew, with today's vocabulary, tables and model, and says what has"
            + " changed since.",
        "They are kept by capture --keep-utterances, or keep-utterances = true in station.toml."
      },
      footer = {
        "",
        "Exit codes: 0 all is understood as it was, 1 something has changed or cannot be read,",
        "2 wrong use, 3 the model is missing."
      })
  static final class Replay extends WithOptions {

    @Mixin private ReplayOptions replay;

    @Override
    public Integer call() {
      return new ReplayCommand(options, replay).run();
    }
  }
}
