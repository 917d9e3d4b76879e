package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.support.Outside;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What was acknowledged is there after the process was killed or its writes failed. */
@Timeout(60)
class DurabilityTest {

  /** Records of 6 values and a save make 7 lines. */
  private static final int LINES_A_RECORD = 7;

  @TempDir Path folder;
  @TempDir Path natives;

  @ParameterizedTest
  @ValueSource(
      ints = {2, 4, 6, LINES_A_RECORD + 3, 5 * LINES_A_RECORD + 5, 60 * LINES_A_RECORD + 2})
  void everyAcknowledgedValueIsThereAfterAKillInMidRecord(int lines) throws IOException {
    List<String> acknowledged;
    try (OtherProcess writer = OtherProcess.start(folder, natives, "write")) {
      acknowledged = new ArrayList<>(writer.next(lines));
      acknowledged.addAll(writer.kill());
    }
    assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(lines).startsWith("open");
    assertAllThere(acknowledged);
  }

  @Test
  void everyAcknowledgedValueIsThereAfterSeveralKillsInARow() throws IOException {
    List<String> acknowledged = new ArrayList<>();
    for (int kill = 0; kill < 3; kill++) {
      try (OtherProcess writer = OtherProcess.start(folder, natives, "write")) {
        acknowledged.addAll(writer.next(LINES_A_RECORD + 2 + kill));
        acknowledged.addAll(writer.kill());
      }
    }
    assertThat(acknowledged.stream().filter("open"::equals)).hasSize(3);
    assertAllThere(acknowledged);
  }

  @Test
  void everyAcknowledgedValueIsThereAfterTheSystemRefusesToWrite() throws IOException {
    // no file may grow beyond 4,096,000 bytes, which the log reaches just before it is moved into
    // the database for the first time at 1000 pages of 4096; the write fails with EFBIG
    String limited = "ulimit -f 8000 && exec \"$0\" \"$@\"";
    List<String> before = List.of(Outside.program("sh").toString(), "-c", limited);
    List<String> printed;
    try (OtherProcess writer = OtherProcess.start(before, folder, natives, "write")) {
      printed = new ArrayList<>(writer.rest());
    }
    assertThat(printed).hasSizeGreaterThan(LINES_A_RECORD);
    String last = printed.remove(printed.size() - 1);
    assertThat(last)
        .startsWith("refused Record ")
        .endsWith(
            ": the disk failed at "
                + folder.resolve("calamus.db")
                + "; check that the drive is connected and do it again");
    assertAllThere(printed);
  }

  private void assertAllThere(List<String> acknowledged) {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      Map<Long, CaptureRecord> saved = new HashMap<>();
      store.saved().forEach(record -> saved.put(record.id(), record));
      Map<Long, CaptureRecord> all = new HashMap<>(saved);
      // each process that was killed in mid-record left one behind
      for (var open = store.unfinished(); open.isPresent(); open = store.unfinished()) {
        all.put(open.get().id(), open.get());
        store.abandon(open.get(), Birds.later(9999));
      }
      for (String line : acknowledged) {
        String[] part = line.split(" ");
        if (part[0].equals("journal")) {
          assertThat(all.get(Long.valueOf(part[1])).value(FieldId.valueOf(part[2])))
              .as(line)
              .map(FieldValue::text)
              .contains(part[3]);
        } else if (part[0].equals("save")) {
          assertThat(saved).as(line).containsKey(Long.valueOf(part[1]));
        }
      }
      assertThat(Look.texts(store, "PRAGMA integrity_check")).containsExactly("ok");
    }
  }
}
