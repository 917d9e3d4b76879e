package org.calamus.boot;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that every command has. */
final class Options {

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description =
          "The folder of the records and settings (default: .calamus in the home folder).")
  private Path data;

  @Option(
      names = "--cache",
      paramLabel = "DIR",
      description = "The folder of what can be built anew (default: cache in the data folder).")
  private Path cache;

  @Option(
      names = "--model",
      paramLabel = "DIR",
      description = "A Vosk model of your own, one that takes grammars at run time.")
  private Path model;

  @Option(names = "--plain", description = "No screen: one line an event.")
  private boolean isPlain;

  Folders folders() {
    return new Folders(Optional.ofNullable(data), Optional.ofNullable(cache));
  }

  Optional<Path> model() {
    return Optional.ofNullable(model);
  }

  boolean isPlain() {
    return isPlain;
  }
}
