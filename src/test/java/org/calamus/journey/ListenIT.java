package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.calamus.support.JarProcess;
import org.calamus.support.ShortForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One bird, partly said and partly keyed: both ways lead into the same record. */
class ListenIT {

  private static String speech(String name) {
    return Path.of("demo-data", "speech", name + ".wav").toAbsolutePath().toString();
  }

  @Test
  void takesOneRecordByVoiceAndKeypad(@TempDir Path data) throws Exception {
    ShortForm.into(data);
    try (JarProcess jar =
        JarProcess.start(
            "capture",
            "--plain",
            "--quiet",
            "--data",
            data.toString(),
            "--cache",
            JarProcess.cache().toString(),
            "--listen",
            speech("01-band"),
            "--listen",
            speech("09-species"),
            "--listen",
            speech("13-mass"))) {
      jar.await("taken: Band number 2841-55601 (said)");
      jar.await("taken: Species BCCH  Black-capped Chickadee (said)");
      // keyed while the mass is being said
      jar.type("1\n");
      jar.await("taken: Age AHY  after hatching year (keyed)");
      jar.await("taken: Mass 11.4 g (said)");
      jar.type("0\n46\n");
      assertThat(jar.await("CHECK ")).contains("Wing chord 46 mm", "64 would fit");
      jar.type("64\n");
      jar.await("taken: Wing chord 64 mm (keyed)");
      jar.type("\n");
      assertThat(jar.await("saved 1: "))
          .contains("band 2841-55601  species BCCH  age AHY  sex U  wing 64 mm  mass 11.4 g");
      jar.closeInput();
      assertThat(jar.exitCode()).isZero();
    }
  }
}
