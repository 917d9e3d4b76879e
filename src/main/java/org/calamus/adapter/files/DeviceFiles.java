package org.calamus.adapter.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.port.Devices;

/**
 * Device files: those in the user's own folder, and behind them those that come with Calamus. A
 * file of the user's hides one of the same name that comes with Calamus.
 */
public final class DeviceFiles implements Devices {

  private static final String ENDING = ".toml";
  private static final String CARRIED = "/devices/";
  private static final String NAMES = CARRIED + "names.txt";

  private final List<Path> folders;

  private DeviceFiles(List<Path> folders) {
    this.folders = List.copyOf(folders);
  }

  /** Only the files that come with Calamus. */
  public static DeviceFiles carried() {
    return new DeviceFiles(List.of());
  }

  /**
   * The files of a folder, and those that come with Calamus.
   *
   * @param folder the folder; it need not exist
   */
  public static DeviceFiles in(Path folder) {
    return new DeviceFiles(List.of(folder));
  }

  @Override
  public List<String> names() {
    TreeSet<String> names = new TreeSet<>(carriedNames());
    for (Path folder : folders) {
      if (!Files.isDirectory(folder)) {
        continue;
      }
      try (Stream<Path> files = Files.list(folder)) {
        files
            .map(file -> file.getFileName().toString())
            .filter(file -> file.endsWith(ENDING))
            .forEach(file -> names.add(nameOf(file)));
      } catch (IOException e) {
        throw new DeviceException(
            "The folder " + folder + " cannot be read; check its permissions.", e);
      }
    }
    return List.copyOf(names);
  }

  @Override
  public DeviceDescription device(String name) {
    if (name.endsWith(ENDING)) {
      return ofFile(Path.of(name));
    }
    for (Path folder : folders) {
      Path file = folder.resolve(name + ENDING);
      if (Files.exists(file)) {
        return ofFile(file);
      }
    }
    if (!carriedNames().contains(name)) {
      throw new DeviceException(
          "There is no device file "
              + name
              + ENDING
              + "; known are "
              + String.join(", ", names())
              + ".");
    }
    return DeviceFileParser.parse(
        "devices/" + name + ENDING, name, carried(CARRIED + name + ENDING));
  }

  private static DeviceDescription ofFile(Path file) {
    String text;
    try {
      text = Files.readString(file, StandardCharsets.UTF_8);
    } catch (NoSuchFileException e) {
      throw new DeviceException("There is no device file " + file + "; check its name.", e);
    } catch (CharacterCodingException e) {
      throw new DeviceException(
          "The device file " + file + " is not written in UTF-8; save it as UTF-8.", e);
    } catch (IOException e) {
      throw new DeviceException(
          "The device file " + file + " cannot be read; check its permissions.", e);
    }
    return DeviceFileParser.parse(file.toString(), nameOf(file.getFileName().toString()), text);
  }

  private static String nameOf(String file) {
    return file.substring(0, file.length() - ENDING.length());
  }

  private static List<String> carriedNames() {
    return carried(NAMES).lines().map(String::strip).filter(name -> !name.isEmpty()).toList();
  }

  private static String carried(String resource) {
    try (InputStream stream = DeviceFiles.class.getResourceAsStream(resource)) {
      if (stream == null) {
        throw new IllegalStateException("the jar lacks " + resource);
      }
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new DeviceException(
          "The file " + resource + " inside the program cannot be read; install it again.", e);
    }
  }
}
