package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.port.RecordStore.StoreException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FailureTest {

  @TempDir Path folder;
  @TempDir Path natives;
  private Path file;

  @BeforeEach
  void nameFile() {
    file = folder.resolve("calamus.db");
  }

  @Test
  void fullDiskLosesNothingAndTheStoreGoesOnOnceThereIsSpace() {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      CaptureRecord bird = Birds.banded(1);
      store.journal(bird, FieldId.BAND, Birds.band(1));
      // a limit of the connection gives the same error as a full disk
      Look.run(store, "PRAGMA max_page_count = 1");
      CaptureRecord longer = bird.with(FieldId.MASS, wordy());
      assertThatThrownBy(() -> store.journal(longer, FieldId.MASS, wordy()))
          .isInstanceOf(StoreException.class)
          .hasMessage(
              "Record 1, mass, is not stored: the disk is full; free some space and do it again ("
                  + file
                  + ")");
      assertThat(store.unfinished()).contains(bird);
      assertThatThrownBy(() -> store.save(longer, Birds.later(60)))
          .isInstanceOf(StoreException.class)
          .hasMessageStartingWith("Record 1 is not saved: the disk is full");
      assertThat(store.unfinished()).contains(bird);
      assertThat(store.saved()).isEmpty();
      Look.run(store, "PRAGMA max_page_count = 1000000");
      store.journal(longer, FieldId.MASS, wordy());
      assertThat(store.unfinished()).contains(longer);
      store.save(longer, Birds.later(60));
      assertThat(store.saved()).containsExactly(longer);
    }
  }

  @Test
  void storeThatMayNotWriteSaysSoAndStillReads() {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      store.save(Birds.banded(1), Birds.later(60));
      Look.run(store, "PRAGMA query_only = ON");
      assertThatThrownBy(() -> store.save(Birds.banded(2), Birds.later(70)))
          .isInstanceOf(StoreException.class)
          .hasMessage(
              "Record 2 is not saved: "
                  + file
                  + " may not be written to; make the file and its folder writable and do it"
                  + " again");
      assertThat(store.saved()).containsExactly(Birds.banded(1));
      Look.run(store, "PRAGMA query_only = OFF");
      store.save(Birds.banded(2), Birds.later(70));
      assertThat(store.saved()).containsExactly(Birds.banded(1), Birds.banded(2));
    }
  }

  @Test
  void readOnlyFolderIsRefusedAndCanBeChecked() throws IOException {
    new SqliteRecordStore(folder, natives).close();
    Files.delete(folder.resolve(FolderLock.FILE_NAME));
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
    try {
      assumeFalse(Files.isWritable(folder), "permissions do not stop the user who runs this");
      assertThatThrownBy(() -> new SqliteRecordStore(folder, natives))
          .isInstanceOf(StoreException.class)
          .hasMessage(
              "Calamus may not write to the folder "
                  + folder
                  + "; make it writable or give another folder with --data");
      assertThat(SqliteRecordStore.health(folder, natives)).startsWith("0 saved");
    } finally {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  @Test
  void folderThatIsAFileIsRefused() throws IOException {
    Path notes = Files.writeString(folder.resolve("notes.txt"), "not a folder");
    for (Path given : List.of(notes, notes.resolve("below"))) {
      assertThatThrownBy(() -> new SqliteRecordStore(given, natives))
          .isInstanceOf(StoreException.class)
          .hasMessageContaining("--data")
          .hasMessageContaining(given.toString());
    }
    assertThat(notes).hasContent("not a folder");
  }

  @Test
  void nativeFolderThatIsAFileIsRefused() throws IOException {
    Path notes = Files.writeString(folder.resolve("notes.txt"), "not a folder");
    assertThatThrownBy(() -> new SqliteRecordStore(folder, notes))
        .isInstanceOf(StoreException.class)
        .hasMessageStartingWith("The database library cannot be unpacked into " + notes);
  }

  @Test
  void fileThatIsNoDatabaseIsRefusedUntouchedAndTheFolderIsFreeAgain() throws IOException {
    Files.writeString(file, "band,species\n".repeat(100));
    assertRefusedAsDamaged();
    assertThat(file).hasContent("band,species\n".repeat(100));
    Files.delete(file);
    new SqliteRecordStore(folder, natives).close();
  }

  @Test
  void damagedDatabaseIsRefused() throws IOException {
    fill(50);
    try (RandomAccessFile damage = new RandomAccessFile(file.toFile(), "rw")) {
      damage.seek(4096);
      damage.write(new byte[(int) damage.length() - 2 * 4096]);
    }
    assertRefusedAsDamaged();
  }

  @Test
  void cutDatabaseIsRefused() throws IOException {
    fill(50);
    try (RandomAccessFile damage = new RandomAccessFile(file.toFile(), "rw")) {
      damage.setLength(3 * 4096);
    }
    assertRefusedAsDamaged();
  }

  @Test
  void columnWithWhatCalamusNeverWroteIsDamage() throws SQLException {
    fill(1);
    try (var c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Sql.run(c, "INSERT INTO capture_record VALUES (2, 'yesterday', 'Fenwick Marsh', 'QX')");
    }
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      assertThatThrownBy(store::unfinished)
          .isInstanceOf(StoreException.class)
          .hasMessageStartingWith("The last record cannot be read: " + file + " is damaged");
      assertThat(store.saved()).hasSize(1);
    }
  }

  @Test
  void foreignWriterIsWaitedForThenNamedAndTheNextCallWorks() throws SQLException {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      Look.run(store, "PRAGMA busy_timeout = 10");
      try (var foreign = DriverManager.getConnection("jdbc:sqlite:" + file)) {
        Sql.run(foreign, "BEGIN IMMEDIATE");
        assertThatThrownBy(() -> store.save(Birds.banded(1), Birds.later(60)))
            .isInstanceOf(StoreException.class)
            .hasMessage(
                "Record 1 is not saved: another program is using "
                    + file
                    + "; close that program and do it again");
      }
      store.save(Birds.banded(1), Birds.later(60));
      assertThat(store.saved()).containsExactly(Birds.banded(1));
    }
  }

  @Test
  void movedFileIsNoticedBeforeAnythingIsWrittenIntoTheVoid() throws IOException {
    Path elsewhere = folder.resolve("elsewhere.db");
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      store.save(Birds.banded(1), Birds.later(60));
      Files.move(file, elsewhere, StandardCopyOption.ATOMIC_MOVE);
      assertThatThrownBy(() -> store.save(Birds.banded(2), Birds.later(70)))
          .isInstanceOf(StoreException.class)
          .hasMessageContaining(file + " was moved or deleted while it was in use");
      Files.move(elsewhere, file, StandardCopyOption.ATOMIC_MOVE);
      store.save(Birds.banded(2), Birds.later(70));
      assertThat(store.saved()).containsExactly(Birds.banded(1), Birds.banded(2));
    }
  }

  @Test
  void lostConnectionIsOpenedAgain() {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      store.save(Birds.banded(1), Birds.later(60));
      store.onConnection(
          c -> {
            c.close();
            return 0;
          });
      store.save(Birds.banded(2), Birds.later(70));
      assertThat(store.saved()).containsExactly(Birds.banded(1), Birds.banded(2));
      assertThat(Look.number(store, "PRAGMA synchronous")).isEqualTo(2);
    }
  }

  private void assertRefusedAsDamaged() {
    for (var attempt :
        List.<org.assertj.core.api.ThrowableAssert.ThrowingCallable>of(
            () -> new SqliteRecordStore(folder, natives),
            () -> SqliteRecordStore.health(folder, natives))) {
      StoreException refused = catchThrowableOfType(StoreException.class, attempt);
      assertThat(refused)
          .hasMessageContaining(
              file + " is damaged or no database of Calamus and was left as it is; copy");
    }
  }

  private void fill(int records) {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      for (int id = 1; id <= records; id++) {
        store.save(Birds.banded(id).with(FieldId.MASS, wordy()), Birds.later(id));
      }
    }
  }

  private static Entry wordy() {
    return new Entry(
        Birds.mass("22.30").value(),
        new Provenance(Provenance.Way.MEASURED, "22.30 g ".repeat(6000)),
        Birds.later(30),
        List.of());
  }
}
