package org.calamus.adapter.vosk;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A folder with a model that the recogniser can load, held until closed.
 *
 * <p>One from the cache is protected from being cleared away while held.
 */
public final class ModelFolder implements AutoCloseable {

  private final Path path;
  private final UseMark mark;

  private ModelFolder(Path path, UseMark mark) {
    this.path = path;
    this.mark = mark;
  }

  static ModelFolder cached(Path path, UseMark mark) {
    return new ModelFolder(path, mark);
  }

  /**
   * Takes a model folder of the user's own.
   *
   * @throws ModelException when it is no model, or none that takes grammars at run time
   */
  public static ModelFolder ofUser(Path path) {
    if (!Files.isDirectory(path)) {
      throw new ModelException(
          "There is no speech model folder " + path + ": give the folder that holds am and graph.");
    }
    if (!Files.isRegularFile(path.resolve("am/final.mdl"))) {
      throw new ModelException(
          path
              + " is no speech model: it has no file am/final.mdl. Give the folder that holds am.");
    }
    for (String part : new String[] {"graph/HCLr.fst", "graph/Gr.fst"}) {
      if (!Files.isRegularFile(path.resolve(part))) {
        throw new ModelException(
            "The speech model "
                + path
                + " cannot be limited to the words of a field: it has no file "
                + part
                + ". Use a model with graph/HCLr.fst and graph/Gr.fst, as small models have.");
      }
    }
    return new ModelFolder(path, UseMark.NONE);
  }

  /** Returns the folder. */
  public Path path() {
    return path;
  }

  /** Lets the folder go. */
  @Override
  public void close() {
    mark.close();
  }
}
