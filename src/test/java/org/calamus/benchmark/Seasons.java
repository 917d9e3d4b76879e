package org.calamus.benchmark;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.Captures;
import org.calamus.core.record.PastCapture;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;

/** What many saved records cost: at the start, in memory, and with each bird more. */
final class Seasons {

  /** Saved in many seasons by a busy station. */
  static final int RECORDS = 50_000;

  private static final int SAVES = 2000;
  private static final double MEGABYTE = 1e6;

  /** Twelve values a record; one bird in five is a recapture of the one 400 records before. */
  private static final String FILL =
      """
      PRAGMA synchronous = OFF;
      BEGIN;
      CREATE TEMP TABLE n AS WITH RECURSIVE c (i) AS
        (SELECT 1 UNION ALL SELECT i + 1 FROM c LIMIT %d) SELECT i FROM c;
      INSERT INTO capture_record SELECT i, strftime('%%Y-%%m-%%dT%%H:%%M:%%S.250Z',
        1700000000 + i * 300, 'unixepoch'), 'Fenwick Marsh (invented)', 'QX' FROM n;
      CREATE TEMP TABLE f (p, field, kind, unit, way);
      INSERT INTO f VALUES (0, 'BAND', 'band', '', 'said'), (1, 'SPECIES', 'code', '', 'said'),
        (2, 'AGE', 'code', '', 'said'), (3, 'HOW_AGED', 'codes', '', 'said'),
        (4, 'SEX', 'code', '', 'said'), (5, 'SKULL', 'code', '', 'keyed'),
        (6, 'FAT', 'code', '', 'keyed'), (7, 'WING', 'measure', 'mm', 'said'),
        (8, 'TAIL', 'measure', 'mm', 'said'), (9, 'MASS', 'measure', 'g', 'measured'),
        (10, 'NET', 'code', '', 'keyed'), (11, 'TIME', 'time', '', 'keyed');
      INSERT INTO journal (sequence, record_id, field, kind, text, unit, memo, way, detail,
          entered_at)
        SELECT i * 12 + p, i, field, kind, CASE p
          WHEN 0 THEN printf('2841-%%05d', (CASE WHEN i %% 5 = 0 AND i > 400 THEN i - 399 ELSE i END))
          WHEN 1 THEN 'SP' || (i %% 90) WHEN 3 THEN 'S P' WHEN 7 THEN 50 + i %% 90
          WHEN 8 THEN 40 + i %% 70 WHEN 9 THEN printf('%%.2f', 8 + (i * 7 %% 3000) / 100.0)
          WHEN 11 THEN printf('%%02d:%%02d', 5 + i %% 7, i %% 60) ELSE i %% 6 END,
          unit, '', way, 'the words that were said or the line of ' || field || ' of ' || i,
          strftime('%%Y-%%m-%%dT%%H:%%M:%%S.250Z', 1700000000 + i * 300 + p, 'unixepoch')
        FROM n CROSS JOIN f ORDER BY i, p;
      INSERT INTO confirmed_rule SELECT i * 12 + 7, 0, 'wing-for-species' FROM n WHERE i %% 20 = 0;
      INSERT INTO record_event SELECT i, i, 'saved', strftime('%%Y-%%m-%%dT%%H:%%M:%%S.250Z',
        1700000000 + i * 300 + 200, 'unixepoch'), i * 12 + 11 FROM n;
      COMMIT;
      """;

  private Seasons() {}

  /** Fills a folder with saved records, quicker than they could be saved one by one. */
  static void make(Path folder) throws IOException {
    Files.createDirectories(folder);
    new SqliteRecordStore(folder, folder.resolve("natives")).close();
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("calamus.db"));
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(String.format(java.util.Locale.ROOT, FILL, RECORDS));
    } catch (SQLException e) {
      throw new IOException(e);
    }
  }

  /**
   * Prints what it takes to have all saved records at hand: seconds to open, read and index them;
   * megabytes that they hold; then the milliseconds of each of many saves.
   */
  static void history(Path folder) {
    double before = heap();
    long began = System.nanoTime();
    Known known;
    try (SqliteRecordStore store = new SqliteRecordStore(folder, folder.resolve("natives"))) {
      known = Known.of(List.of(), store.pastCaptures(), Fenwick.ZONE);
    }
    double seconds = (System.nanoTime() - began) / 1e9;
    double held = heap() - before;
    List<Double> saves = saves(known.captures());
    System.out.println("took " + seconds + " " + held + " " + peak());
    saves.forEach(millis -> System.out.println("took " + millis));
    if (known.captures().size() != RECORDS || known.ledger().expected().isEmpty()) {
      throw new IllegalStateException("only " + known.captures().size());
    }
  }

  /** Prints the same for whole records with their provenance, for comparison. */
  static void whole(Path folder) {
    double before = heap();
    long began = System.nanoTime();
    try (SqliteRecordStore store = new SqliteRecordStore(folder, folder.resolve("natives"))) {
      var saved = store.saved();
      double seconds = (System.nanoTime() - began) / 1e9;
      double held = heap() - before;
      System.out.println("took " + seconds + " " + held + " " + peak());
      if (saved.size() != RECORDS) {
        throw new IllegalStateException("only " + saved.size());
      }
    }
  }

  private static List<Double> saves(Captures all) {
    Captures grown = all;
    List<Double> millis = new ArrayList<>();
    for (int i = 1; i <= SAVES; i++) {
      PastCapture like = grown.ofBand(new BandNumber("2841", "00001")).get(0);
      PastCapture next =
          new PastCapture(
              RECORDS + i,
              like.capturedAt().plusSeconds(i),
              like.place(),
              like.bander(),
              like.values(),
              like.doubted());
      long began = System.nanoTime();
      grown = grown.with(next);
      millis.add((System.nanoTime() - began) / 1e6);
      grown = grown.without(RECORDS + i);
    }
    return millis;
  }

  /** Megabytes of live objects. */
  private static double heap() {
    for (int i = 0; i < 3; i++) {
      System.gc();
    }
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / MEGABYTE;
  }

  /** Megabytes of memory that the process ever had at once; nothing outside Linux. */
  private static double peak() {
    try {
      return Benchmarks.megabytes(Files.readString(Path.of("/proc/self/status")), "VmHWM");
    } catch (IOException e) {
      return Double.NaN;
    }
  }
}
