package org.calamus.adapter.vosk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/**
 * The list of a cached model's files with their sizes and checksums, kept among them.
 *
 * <p>It is there to notice damage, at every start: CRC-32 goes through a model in a millisecond,
 * where SHA-256 in a virtual machine that has just started takes a hundred.
 */
final class Manifest {

  /** Name of the list. */
  static final String NAME = "manifest.txt";

  private Manifest() {}

  /** Gives the list for files and the key they were built for. */
  static String of(String key, SortedMap<String, byte[]> files) {
    return files.entrySet().stream()
        .map(
            file ->
                checksum(file.getValue())
                    + " "
                    + file.getValue().length
                    + " "
                    + file.getKey()
                    + "\n")
        .collect(Collectors.joining("", key + "\n", "end\n"));
  }

  /** Whether a folder holds just what its list says, for this key. */
  static boolean agrees(String key, Path folder) throws IOException {
    Path list = folder.resolve(NAME);
    if (!Files.isRegularFile(list)) {
      return false;
    }
    SortedMap<String, byte[]> files = new TreeMap<>();
    for (Path file : filesIn(folder)) {
      if (!file.equals(list)) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        files.put(name, Files.readAllBytes(file));
      }
    }
    byte[] expected = of(key, files).getBytes(StandardCharsets.UTF_8);
    return Arrays.equals(expected, Files.readAllBytes(list));
  }

  private static String checksum(byte[] bytes) {
    CRC32 sum = new CRC32();
    sum.update(bytes);
    return HexFormat.of().toHexDigits((int) sum.getValue());
  }

  private static List<Path> filesIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(file -> !Files.isDirectory(file)).toList();
    }
  }
}
