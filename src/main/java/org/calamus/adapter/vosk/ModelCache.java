package org.calamus.adapter.vosk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import org.calamus.acoustic.ModelBuilder;
import org.calamus.acoustic.Pronunciations;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.WordToBuild;

/**
 * Keeps the model built from the shipped tables, so that only the first start with a set of words
 * builds one.
 *
 * <pre>{@code
 * try (ModelFolder model = new ModelCache(folder).open(words, Settings.standard())) {
 *   // load model.path() into the recogniser
 * }
 * }</pre>
 *
 * <p>A model's folder is named by a checksum over everything that went into it. One lock serves the
 * whole cache: of two starts at once the second waits and finds the model of the first. Files are
 * written beside their place, made durable, and moved there in one step; what is found later is
 * compared with its list of checksums and built again if it does not agree.
 */
public final class ModelCache {

  private static final String LOCK = "cache.lock";

  // file locks belong to the process, so its threads need one of their own
  private static final Object THREADS = new Object();

  private final Path cache;
  private final ShippedTables shipped;

  /**
   * Uses a folder as the cache.
   *
   * @param cache the folder; it is made if need be
   */
  public ModelCache(Path cache) {
    this(cache, ShippedTables.ofProgram());
  }

  ModelCache(Path cache, ShippedTables shipped) {
    this.cache = cache.toAbsolutePath().normalize();
    this.shipped = shipped;
  }

  /** How words are said, as {@link Pronunciations} tells it, by the shipped dictionary. */
  public static Map<String, List<String>> pronunciations(List<WordToBuild> words) {
    return Pronunciations.of(words, ShippedTables.ofProgram().dictionary());
  }

  /**
   * Finds or builds the model for a set of words.
   *
   * @param words all words of all grammars
   * @param settings the model's settings
   * @return its folder, to be closed when the recogniser is done with it
   * @throws ModelException when the cache cannot be written or the shipped tables are damaged
   * @throws org.calamus.acoustic.UnusableWordsException naming each word that cannot be built
   */
  public ModelFolder open(List<WordToBuild> words, Settings settings) {
    String key = key(words, settings);
    synchronized (THREADS) {
      try {
        Files.createDirectories(cache);
        try (FileChannel channel =
                FileChannel.open(
                    cache.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = channel.lock()) {
          return openLocked(lock, key, words, settings);
        }
      } catch (IOException e) {
        throw unusable(e);
      } catch (UncheckedIOException e) {
        throw unusable(e.getCause());
      }
    }
  }

  private ModelFolder openLocked(
      FileLock lock, String key, List<WordToBuild> words, Settings settings) throws IOException {
    if (!lock.isValid()) {
      throw new IOException("the lock was lost");
    }
    CacheFolders folders = new CacheFolders(cache);
    Path folder = folders.of(key);
    if (!Manifest.agrees(key, folder)) {
      folders.replace(
          key, ModelBuilder.build(shipped.tables(), shipped.dictionary(), words, settings).files());
    }
    ModelFolder opened = ModelFolder.cached(folder, UseMark.on(folder));
    folders.clearOthers(key);
    return opened;
  }

  /** Covers all that the model's bytes depend on; lines of vocabularies may move freely. */
  private static String key(List<WordToBuild> words, Settings settings) {
    StringBuilder all = new StringBuilder();
    all.append(ModelBuilder.VERSION).append('\n');
    all.append(ShippedTables.fingerprint()).append('\n');
    all.append(settings).append('\n');
    for (WordToBuild word : words) {
      all.append(word.word()).append('\t').append(word.pronunciations());
      all.append('\t').append(word.chain()).append('\n');
    }
    return Checksums.of(all.toString());
  }

  private ModelException unusable(IOException e) {
    return new ModelException(
        "The speech model cannot be kept in the folder "
            + cache
            + " ("
            + reason(e)
            + "): make it writable with 20 MB free, or choose another folder.",
        e);
  }

  private static String reason(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "no permission for " + e.getMessage();
    }
    if (e instanceof FileSystemException file && file.getReason() == null) {
      return e.getClass().getSimpleName().replace("Exception", "") + ": " + e.getMessage();
    }
    return e.getMessage();
  }
}
