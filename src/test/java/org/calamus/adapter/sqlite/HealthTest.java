package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.calamus.core.record.FieldId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class HealthTest {

  @TempDir Path folder;
  @TempDir Path natives;

  @Test
  void healthOfAMissingFolderMakesNothing() {
    Path missing = folder.resolve("season");
    assertThat(SqliteRecordStore.health(missing, natives))
        .isEqualTo("no records yet; the folder " + missing + " will be made");
    assertThat(missing).doesNotExist();
  }

  @Test
  void healthOfAnEmptyFolderMakesNothing() {
    assertThat(SqliteRecordStore.health(folder, natives))
        .matches("no records yet; \\d+\\.\\d GB free in .*");
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void healthCountsRecordsAndChangesNothing() throws IOException {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      store.save(Birds.banded(1), Birds.later(60));
      store.save(Birds.banded(2), Birds.later(70));
      store.journal(Birds.banded(3), FieldId.BAND, Birds.band(3));
      store.journal(Birds.banded(4), FieldId.BAND, Birds.band(4));
      store.abandon(Birds.banded(4), Birds.later(80));
    }
    List<String> before = files();
    assertThat(SqliteRecordStore.health(folder, natives))
        .matches(
            "2 saved, 1 unfinished; schema version 4; \\d+ kB; \\d+\\.\\d GB free in " + folder);
    assertThat(files()).isEqualTo(before);
  }

  @Test
  void healthBesideAnEmptyLogMakesNoIndexOfIt() throws IOException {
    new SqliteRecordStore(folder, natives).close();
    Files.createFile(folder.resolve("calamus.db-wal"));
    assertThat(SqliteRecordStore.health(folder, natives)).startsWith("0 saved, 0 unfinished");
    assertThat(folder.resolve("calamus.db-shm")).doesNotExist();
  }

  @Test
  void healthSeesWhatARunningStoreHasJustCommitted() {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      store.save(Birds.banded(1), Birds.later(60));
      assertThat(SqliteRecordStore.health(folder, natives)).startsWith("1 saved, 0 unfinished;");
      store.save(Birds.banded(2), Birds.later(70));
      assertThat(SqliteRecordStore.health(folder, natives)).startsWith("2 saved, 0 unfinished;");
    }
  }

  @Test
  void healthAfterAKillReadsTheLogAndNamesNobody() throws IOException {
    try (OtherProcess writer = OtherProcess.start(folder, natives, "write")) {
      assertThat(writer.next(9)).contains("save 1");
      writer.kill();
    }
    List<String> before = files();
    assertThat(SqliteRecordStore.health(folder, natives))
        .matches("\\d+ saved, [01] unfinished; schema version 4; .* GB free in " + folder)
        .doesNotStartWith("0 saved");
    assertThat(files()).isEqualTo(before);
  }

  /** Names, sizes and times, but for the log's index, which readers lock themselves in. */
  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(folder).sorted()) {
      List<Path> all = files.filter(f -> !f.toString().endsWith("-shm")).toList();
      List<String> described = new java.util.ArrayList<>();
      for (Path file : all) {
        described.add(
            file.getFileName() + " " + Files.size(file) + " " + Files.getLastModifiedTime(file));
      }
      return described;
    }
  }
}
