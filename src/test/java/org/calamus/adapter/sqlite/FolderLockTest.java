package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.calamus.port.RecordStore.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class FolderLockTest {

  @TempDir Path folder;
  @TempDir Path natives;

  @Test
  void secondStoreOfTheSameProcessIsRefused() {
    try (SqliteRecordStore first = new SqliteRecordStore(folder, natives)) {
      assertThatThrownBy(() -> new SqliteRecordStore(folder, natives))
          .isInstanceOf(StoreException.class)
          .hasMessage(taken(ProcessHandle.current().pid()));
      first.save(Birds.banded(1), Birds.later(60));
    }
    try (SqliteRecordStore next = new SqliteRecordStore(folder, natives)) {
      assertThat(next.saved()).containsExactly(Birds.banded(1));
    }
  }

  @Test
  void secondStoreByAnotherNameOfTheFolderIsRefused() throws IOException {
    Path real = Files.createDirectory(folder.resolve("real"));
    Path link = Files.createSymbolicLink(folder.resolve("link"), real);
    try (SqliteRecordStore first = new SqliteRecordStore(real, natives)) {
      assertThatThrownBy(() -> new SqliteRecordStore(link, natives))
          .isInstanceOf(StoreException.class);
      assertThat(first.nextRecordId()).isEqualTo(1);
    }
  }

  @Test
  void storeOfAnotherProcessIsRefusedUntilItIsKilled() throws IOException {
    try (OtherProcess other = OtherProcess.start(folder, natives, "hold")) {
      assertThat(other.next(1)).containsExactly("open");
      assertThatThrownBy(() -> new SqliteRecordStore(folder, natives))
          .isInstanceOf(StoreException.class)
          .hasMessage(taken(other.pid()));
      assertThat(SqliteRecordStore.health(folder, natives))
          .endsWith("in use by process " + other.pid());
      other.kill();
      try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
        assertThat(store.nextRecordId()).isEqualTo(1);
      }
    }
  }

  @Test
  void refusalAndHealthInTheSameProcessDoNotLetAnotherProcessIn() throws IOException {
    try (SqliteRecordStore first = new SqliteRecordStore(folder, natives)) {
      assertThatThrownBy(() -> new SqliteRecordStore(folder, natives))
          .isInstanceOf(StoreException.class);
      assertThat(SqliteRecordStore.health(folder, natives)).contains("in use by process ");
      first.save(Birds.banded(1), Birds.later(60));
      try (OtherProcess other = OtherProcess.start(folder, natives, "write")) {
        assertThat(other.rest()).containsExactly("refused " + taken(ProcessHandle.current().pid()));
      }
    }
  }

  private static String taken(long pid) {
    return "Another Calamus (process "
        + pid
        + ") is using this folder: close it or give another folder with --data";
  }
}
