package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.calamus.adapter.files.MemoFiles;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The plug is pulled while a note is spoken. */
@Timeout(60)
class KilledMemoTest {

  private static final int HEADER_BYTES = 44;

  @TempDir Path data;
  @TempDir Path natives;

  @Test
  void recordsAreWholeAndWhatWasSpokenIsKeptApart() throws Exception {
    long blocks = blocksBeforeTheKill();
    try (SqliteRecordStore store = new SqliteRecordStore(data, natives)) {
      new MemoFiles(data);
      assertThat(store.unfinished()).contains(MemoWriter.BIRD);
    }
    assertThat(SqliteRecordStore.health(data, natives)).startsWith("0 saved, 1 unfinished");
    Path memos = data.resolve("memos");
    try (Stream<Path> left = Files.list(memos)) {
      assertThat(left).containsExactly(memos.resolve("1-1.cut.wav"));
    }
    ByteBuffer wav =
        ByteBuffer.wrap(Files.readAllBytes(memos.resolve("1-1.cut.wav")))
            .order(ByteOrder.LITTLE_ENDIAN);
    assertThat(wav.getInt(40)).isEqualTo(wav.capacity() - HEADER_BYTES);
    for (int block = 0; block < blocks; block++) {
      assertThat(wav.getShort(HEADER_BYTES + 8 * block)).isEqualTo((short) (block + 1));
    }
  }

  /** Kills the writer, and gives how many blocks it had acknowledged. */
  private long blocksBeforeTheKill() throws Exception {
    Process writer =
        new ProcessBuilder(
                List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-cp",
                    System.getProperty("java.class.path"),
                    MemoWriter.class.getName(),
                    data.toString(),
                    natives.toString()))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader lines = writer.inputReader(StandardCharsets.UTF_8)) {
      long blocks = 0;
      while (blocks < 50) {
        assertThat(lines.readLine()).isEqualTo("block " + ++blocks);
      }
      // by its handle, since Process.destroyForcibly closes the stream with what is still in it
      writer.toHandle().destroyForcibly();
      blocks += lines.lines().filter(line -> line.startsWith("block ")).count();
      return blocks;
    } finally {
      writer.destroyForcibly();
      writer.onExit().orTimeout(20, TimeUnit.SECONDS).join();
    }
  }
}
