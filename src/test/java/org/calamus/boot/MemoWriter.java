package org.calamus.boot;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.calamus.adapter.files.MemoFiles;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.port.Memos;

/** The main class of a second process: keeps a band, and takes down a memo that never ends. */
final class MemoWriter {

  static final CaptureRecord BIRD =
      new CaptureRecord(
          1,
          Instant.parse("2026-05-03T04:10:00Z"),
          "Fenwick Marsh",
          "QX",
          Map.of(
              FieldId.BAND,
              new Entry(
                  new BandNumber("2841", "55601"),
                  new Provenance(Provenance.Way.KEYED, "284155601"),
                  Instant.parse("2026-05-03T04:10:05Z"),
                  List.of())));

  private MemoWriter() {}

  /** Takes the data folder and the folder for natives; prints a line for each block. */
  public static void main(String[] args) {
    Path data = Path.of(args[0]);
    try (SqliteRecordStore store = new SqliteRecordStore(data, Path.of(args[1]));
        Memos.Recording memo = new MemoFiles(data).named("1-1.wav").begin()) {
      store.journal(BIRD, FieldId.BAND, BIRD.entry(FieldId.BAND).orElseThrow());
      for (short i = 1; i > 0; i++) {
        memo.add(new short[] {i, i, i, i});
        System.out.println("block " + i);
        System.out.flush();
      }
    }
  }
}
