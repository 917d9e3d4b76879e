package org.calamus.boot;

import java.io.PrintWriter;
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
    subcommands = {Cli.Demo.class, Cli.Capture.class, Cli.Check.class})
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
    CommandLine line = new CommandLine(new Cli());
    line.setErr(new PrintWriter(System.err, true));
    line.setExecutionExceptionHandler(Cli::explain);
    return line.execute(args);
  }

  private static int explain(
      Exception failure, CommandLine line, CommandLine.ParseResult arguments) {
    PrintWriter err = line.getErr();
    if (failure instanceof Halt halt) {
      err.println(halt.getMessage());
      return halt.exitCode();
    }
    if (failure instanceof SettingsException || failure instanceof Devices.DeviceException) {
      err.println(failure.getMessage());
      return ExitCode.WRONG_USE;
    }
    if (failure instanceof RecordStore.StoreException) {
      err.println(failure.getMessage());
      return ExitCode.FAILURE;
    }
    if (failure instanceof Screen.ScreenException) {
      err.println(failure.getMessage());
      return ExitCode.MISSING;
    }
    return insideFailure(failure, line);
  }

  /** A failure that nobody foresaw: the sentence on the screen, the details in the log. */
  private static int insideFailure(Exception failure, CommandLine line) {
    // the ears may have moved standard error to the log for good
    line.getOut().println(Log.keep(failure, ((WithOptions) line.getCommand()).folders().log()));
    return ExitCode.FAILURE;
  }

  /** A command that knows the folders. */
  interface WithOptions {
    /** Where things are kept. */
    Folders folders();
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
  static final class Demo implements Callable<Integer>, WithOptions {

    @Mixin private Options options;

    @Override
    public Folders folders() {
      return options.folders();
    }

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
  static final class Capture implements Callable<Integer>, WithOptions {

    @Mixin private Options options;

    @Override
    public Folders folders() {
      return options.folders();
    }

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
  static final class Check implements Callable<Integer>, WithOptions {

    @Mixin private Options options;

    @Override
    public Folders folders() {
      return options.folders();
    }

    @Override
    public Integer call() throws Exception {
      return new CheckCommand(options).run();
    }
  }
}
