package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import org.calamus.support.JarProcess;
import org.junit.jupiter.api.Test;

/** What the licences of others ask to go with the jar. */
class LicencesIT {

  private static String text(JarFile jar, String entry) throws IOException {
    try (InputStream in = jar.getInputStream(jar.getEntry(entry))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void theJarHasEveryLicenceText() throws IOException {
    try (JarFile jar = new JarFile(JarProcess.jar().toFile());
        Stream<Path> texts = Files.list(Path.of("docs", "licences"))) {
      List<Path> all = texts.toList();
      assertThat(all).isNotEmpty();
      for (Path each : all) {
        assertThat(text(jar, "META-INF/licences/" + each.getFileName()))
            .isEqualTo(Files.readString(each));
      }
      assertThat(text(jar, "META-INF/licences/third-party.md"))
          .contains("Lanterna and its use are covered by the LGPL 3.0.");
    }
  }

  @Test
  void theJarKeepsWhatTheLibrariesSayBesideItsOwn() throws IOException {
    try (JarFile jar = new JarFile(JarProcess.jar().toFile())) {
      assertThat(text(jar, "META-INF/LICENSE"))
          .contains(Files.readString(Path.of("LICENSE")).strip())
          .contains("Java Native Access (JNA) is licensed");
      assertThat(text(jar, "META-INF/NOTICE")).contains("Jackson JSON processor");
    }
  }
}
