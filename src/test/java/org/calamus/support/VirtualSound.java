package org.calamus.support;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A sound card that is not there: a sound server of its own with a microphone into which a test can
 * speak and a speaker that it can record. Needs PulseAudio and its ALSA plug-in (Debian packages
 * pulseaudio, pulseaudio-utils, libasound2-plugins). A program must be started with {@link
 * #environment()} to see the card.
 */
public final class VirtualSound implements AutoCloseable {

  /** Room for the card's own files; deleted when closed. */
  private final Path folder;

  private final List<Process> processes = new ArrayList<>();
  private final Process server;

  /** Starts the server; skips the test where it is not installed. */
  public static VirtualSound start() throws IOException, InterruptedException {
    Outside.program("pulseaudio");
    Outside.program("paplay");
    Outside.program("parec");
    Outside.file("/usr/share/alsa/alsa.conf");
    return new VirtualSound(Files.createTempDirectory("calamus-sound"));
  }

  private VirtualSound(Path folder) throws IOException, InterruptedException {
    this.folder = folder;
    Files.createDirectory(
        folder.resolve("run"),
        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    write(
        "asound.conf",
        """
        </usr/share/alsa/alsa.conf>
        pcm.!default { type pulse server "unix:%1$s" handle_underrun 1 }
        ctl.!default { type pulse server "unix:%1$s" }
        """);
    write(
        "pulse.pa",
        """
        load-module module-null-sink sink_name=mic rate=16000 channels=1 format=s16le
        load-module module-null-sink sink_name=spk rate=48000 channels=1 format=s16le
        set-default-sink spk
        set-default-source mic.monitor
        load-module module-native-protocol-unix auth-anonymous=1 socket=%1$s
        """);
    server =
        run(
            "pulseaudio -n -F pulse.pa --daemonize=no --use-pid-file=no --exit-idle-time=-1"
                + " --disallow-exit=0 --disable-shm=1 --realtime=no --high-priority=no");
    while (!Files.exists(socket()) && !server.waitFor(50, TimeUnit.MILLISECONDS)) {
      // the socket is there once the server takes clients
    }
    // readers with little latency keep the card awake: the first sound would come 2 s late
    keepAwake("mic.monitor");
    keepAwake("spk.monitor");
  }

  /** What a program needs in its environment to see the card and no other. */
  public Map<String, String> environment() {
    return Map.of(
        "PULSE_SERVER", "unix:" + socket(),
        "ALSA_CONFIG_PATH", folder.resolve("asound.conf").toString(),
        "HOME", folder.toString(),
        "XDG_RUNTIME_DIR", folder.resolve("run").toString());
  }

  /** Starts a class with a main method on the test's class path in a JVM that sees the card. */
  public Process java(Class<?> main, String... arguments) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                main.getName()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(environment());
    // natives are unpacked below the home folder, which shall not be filled anew for each test
    builder.environment().remove("HOME");
    Process process = builder.redirectError(folder.resolve("errors").toFile()).start();
    processes.add(process);
    return process;
  }

  /** Speaks a recording into the microphone and waits until it is over. */
  public void speak(Path wav) throws IOException, InterruptedException {
    run("paplay --latency-msec=100 --device=mic " + wav).waitFor(30, TimeUnit.SECONDS);
  }

  /** Begins to speak a recording and does not wait; what is spoken meanwhile is heard with it. */
  public void speakOn(Path wav) throws IOException {
    run("paplay --latency-msec=100 --device=mic " + wav);
  }

  /** What a program needs to see the card, with the home folder that it has anyway. */
  public Map<String, String> soundOnly() {
    Map<String, String> all = new HashMap<>(environment());
    all.remove("HOME");
    return all;
  }

  /** Begins to record the speaker into a file: 16 kHz, one channel, 16 bit, low byte first. */
  public Process recordSpeaker(Path raw) throws IOException {
    return record("spk.monitor", raw);
  }

  /** Ends the server without warning, as one that crashes. */
  public void kill() throws InterruptedException {
    server.destroyForcibly().waitFor(5, TimeUnit.SECONDS);
  }

  /** Ends the server in good order, as a system does that updates or restarts its sound. */
  public void end() throws InterruptedException {
    server.destroy();
    server.waitFor(5, TimeUnit.SECONDS);
  }

  /** What the last program started wrote to its standard error. */
  public String errors() throws IOException {
    return Files.readString(folder.resolve("errors"));
  }

  @Override
  public void close() {
    processes.forEach(Process::destroyForcibly);
    try {
      for (Process process : processes) {
        process.waitFor(5, TimeUnit.SECONDS);
      }
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.deleteIfExists(file);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Reads until the end, having waited until sound comes: the server may not be ready at once. */
  private void keepAwake(String device) throws IOException, InterruptedException {
    Path raw = folder.resolve(device + ".raw");
    Process reader = record(device, raw);
    while (Files.size(raw) == 0 && server.isAlive()) {
      if (reader.waitFor(20, TimeUnit.MILLISECONDS)) {
        reader = record(device, raw);
      }
    }
  }

  private Path socket() {
    return folder.resolve("pulse.sock");
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(
        folder.resolve(name), String.format(Locale.ROOT, text, socket()), StandardCharsets.UTF_8);
  }

  private Process record(String device, Path raw) throws IOException {
    return started(
        List.of(
            ("parec --rate=16000 --channels=1 --format=s16le --raw --latency-msec=20 --device="
                    + device)
                .split(" ")),
        ProcessBuilder.Redirect.to(raw.toFile()));
  }

  private Process run(String command) throws IOException {
    return started(List.of(command.split(" ")), ProcessBuilder.Redirect.DISCARD);
  }

  private Process started(List<String> command, ProcessBuilder.Redirect output) throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    builder.environment().putAll(environment());
    Process process =
        builder.redirectOutput(output).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    processes.add(process);
    return process;
  }
}
