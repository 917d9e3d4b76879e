package org.calamus.adapter.vosk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.Stream;

/** The models' folders within the cache; all calls are made while holding the cache's lock. */
final class CacheFolders {

  private static final String MODEL = "model-";
  private static final String UNFINISHED = "unfinished-";

  private final Path cache;

  CacheFolders(Path cache) {
    this.cache = cache;
  }

  Path of(String key) {
    return cache.resolve(MODEL + key);
  }

  /** Writes a model durably and puts it in place in one step. */
  void replace(String key, SortedMap<String, byte[]> files) throws IOException {
    Path fresh = Files.createTempDirectory(cache, UNFINISHED);
    Set<Path> folders = new LinkedHashSet<>();
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path path = fresh.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      write(path, file.getValue());
      folders.add(path.getParent());
    }
    String manifest = Manifest.of(key, files);
    write(fresh.resolve(Manifest.NAME), manifest.getBytes(StandardCharsets.UTF_8));
    folders.add(fresh);
    for (Path folder : folders) {
      force(folder);
    }
    Path place = of(key);
    if (Files.exists(place)) {
      // a damaged one, perhaps open elsewhere: its files live on until closed
      Files.move(place, Files.createTempDirectory(cache, UNFINISHED).resolve("damaged"));
    }
    Files.move(fresh, place, StandardCopyOption.ATOMIC_MOVE);
    force(cache);
  }

  /** Clears away models of other keys that nobody uses, and what was left unfinished. */
  void clearOthers(String key) {
    for (Path folder : list(UNFINISHED)) {
      deleteTree(folder);
    }
    for (Path folder : list(MODEL)) {
      if (!folder.equals(of(key)) && !isInUse(folder)) {
        deleteTree(folder);
      }
    }
  }

  private static boolean isInUse(Path folder) {
    try {
      return UseMark.isOn(folder);
    } catch (IOException | DirectoryIteratorException e) {
      return true; // not known: leave it
    }
  }

  private List<Path> list(String prefix) {
    List<Path> paths = new ArrayList<>();
    try (DirectoryStream<Path> found = Files.newDirectoryStream(cache, prefix + "*")) {
      found.forEach(paths::add);
    } catch (IOException | DirectoryIteratorException e) {
      return List.of();
    }
    return paths;
  }

  /** Best effort: what cannot be deleted costs space only, and the next start tries again. */
  private static void deleteTree(Path folder) {
    try (Stream<Path> tree = Files.walk(folder)) {
      for (Path path : tree.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    } catch (IOException | UncheckedIOException e) {
      return;
    }
  }

  private static void write(Path path, byte[] bytes) throws IOException {
    try (FileChannel channel =
        FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      channel.force(true);
    }
  }

  private static void force(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // not every system can do this with folders; the list of checksums finds what was lost
      return;
    }
  }
}
