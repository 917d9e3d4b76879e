package org.calamus.adapter.microphone;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which program holds a microphone, as the Linux sound system tells in files: {@code
 * asound/card0/pcm0c/sub0/status} has a line {@code owner_pid : 123} while it is held, and is
 * {@code closed} otherwise (Linux kernel documentation, "Proc Files of ALSA Drivers"). Elsewhere
 * nothing is known.
 */
final class CaptureUse {

  private static final String OWNER = "owner_pid";

  private final Path proc;

  /**
   * Over the folder of the system's state.
   *
   * @param proc {@code /proc}, or in a test a folder like it; need not exist
   */
  CaptureUse(Path proc) {
    this.proc = proc;
  }

  /** The name of a program that holds a microphone; empty where none is known. */
  Optional<String> program() {
    for (Path card : matching(proc.resolve("asound"), "card[0-9]*")) {
      for (Path device : matching(card, "pcm[0-9]*c")) {
        for (Path part : matching(device, "sub[0-9]*")) {
          Optional<String> holder = holder(part.resolve("status"));
          if (holder.isPresent()) {
            return holder;
          }
        }
      }
    }
    return Optional.empty();
  }

  private Optional<String> holder(Path status) {
    return lines(status).stream()
        .filter(l -> l.startsWith(OWNER))
        .map(l -> l.substring(l.indexOf(':') + 1).strip())
        .filter(pid -> pid.matches("[0-9]{1,9}"))
        .findFirst()
        .map(
            pid -> lines(proc.resolve(pid).resolve("comm")).stream().findFirst().orElse("unnamed"));
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      // no such system, or the program has ended meanwhile: nothing is known
      return List.of();
    }
  }

  private static List<Path> matching(Path folder, String glob) {
    List<Path> found = new ArrayList<>();
    try (DirectoryStream<Path> paths = Files.newDirectoryStream(folder, glob)) {
      paths.forEach(found::add);
    } catch (IOException | java.nio.file.DirectoryIteratorException e) {
      // as above
      return List.of();
    }
    found.sort(null);
    return found;
  }
}
