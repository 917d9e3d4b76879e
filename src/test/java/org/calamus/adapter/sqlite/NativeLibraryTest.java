package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteJDBCLoader;

class NativeLibraryTest {

  private final String before = NativeLibrary.folder();

  @TempDir Path folder;

  @AfterEach
  void restore() {
    System.setProperty("org.sqlite.tmpdir", before);
  }

  @Test
  void unpackToRemovesWhatKilledProcessesLeftAndNothingElse() throws IOException {
    String prefix = "sqlite-" + SQLiteJDBCLoader.getVersion() + "-";
    Path left = aged(prefix + "1-libsqlitejdbc.so");
    Path leftMark = aged(prefix + "1-libsqlitejdbc.so.lck");
    Path other = aged("notes.txt");
    Path fresh = Files.createFile(folder.resolve(prefix + "2-libsqlitejdbc.so"));
    NativeLibrary.unpackTo(folder);
    assertThat(folder).isDirectoryNotContaining(p -> p.equals(left) || p.equals(leftMark));
    assertThat(folder.toFile().list())
        .containsExactlyInAnyOrder(other.getFileName().toString(), fresh.getFileName().toString());
    assertThat(NativeLibrary.folder()).isEqualTo(folder.toString());
  }

  private Path aged(String name) throws IOException {
    Path file = Files.createFile(folder.resolve(name));
    return Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2026-01-01T00:00:00Z")));
  }
}
