package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import org.calamus.port.RecordStore.StoreException;
import org.sqlite.SQLiteErrorCode;

/**
 * The tables, as a row of scripts of which each makes a version from the one before.
 *
 * @param scripts resources, the first makes version 1 from nothing
 */
record Schema(List<String> scripts) {

  /** The schema of this Calamus. */
  static final Schema CURRENT =
      new Schema(
          List.of(
              "/schema/V1__records.sql",
              "/schema/V2__more_kinds.sql",
              "/schema/V3__amendments_and_nets.sql",
              "/schema/V4__dates.sql"));

  /** Marks a file as ours; "Cala" in ASCII. */
  static final int APPLICATION_ID = 0x43616c61;

  /** The header is 100 bytes; both numbers are big-endian (SQLite, "Database File Format" 1.3). */
  private static final int HEADER_BYTES = 100;

  private static final int USER_VERSION_OFFSET = 60;
  private static final int APPLICATION_ID_OFFSET = 68;
  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  Schema {
    scripts = List.copyOf(scripts);
  }

  int version() {
    return scripts.size();
  }

  /**
   * Looks at the first bytes of the file and refuses what is not ours or newer than this Calamus,
   * before SQLite has opened it. Only for a file that nobody in this process has open: closing it
   * here would drop SQLite's own locks (SQLite, "How To Corrupt An SQLite Database File" 2.2).
   */
  void checkHeader(String what, Path file) throws IOException {
    if (!Files.exists(file) || Files.size(file) == 0) {
      return;
    }
    ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES);
    try (FileChannel channel = FileChannel.open(file)) {
      channel.read(header, 0);
    }
    byte[] start = new byte[MAGIC.length];
    header.get(0, start);
    if (header.hasRemaining() || !Arrays.equals(start, MAGIC)) {
      throw Failure.damaged(what, file, new IOException("no SQLite header"));
    }
    int version = header.getInt(USER_VERSION_OFFSET);
    int application = header.getInt(APPLICATION_ID_OFFSET);
    // both are zero where the tables are still in the log alone: the first session was cut short
    if (application != APPLICATION_ID && (application != 0 || version != 0)) {
      throw foreign(what, file);
    }
    refuseNewer(what, file, version);
  }

  /** Refuses a newer version or another program's tables. The version is 0 for an empty file. */
  int check(String what, Path file, Connection connection) throws SQLException {
    int version = (int) Sql.number(connection, "PRAGMA user_version");
    boolean isOurs = Sql.number(connection, "PRAGMA application_id") == APPLICATION_ID;
    if (!isOurs && Sql.number(connection, "SELECT count(*) FROM sqlite_schema") > 0) {
      throw foreign(what, file);
    }
    refuseNewer(what, file, version);
    return version;
  }

  /**
   * Applies the scripts that the database lacks, all or none: a power cut leaves the older version.
   * Foreign keys are not enforced meanwhile, since a script may put a table in another's place, but
   * checked before anything is kept; they are off afterwards.
   */
  void bringUp(Connection connection, int from) throws SQLException {
    if (from == version()) {
      return;
    }
    // has no effect within a transaction
    Sql.run(connection, "PRAGMA foreign_keys = OFF");
    Sql.transaction(
        connection,
        c -> {
          for (String script : scripts.subList(from, version())) {
            Sql.run(c, text(script));
          }
          requireWhole(c);
          Sql.run(c, "PRAGMA application_id = " + APPLICATION_ID);
          Sql.run(c, "PRAGMA user_version = " + version());
          return version();
        });
    // out of the log and into the file, whose first bytes shall tell the version
    Sql.number(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
  }

  private static void requireWhole(Connection connection) throws SQLException {
    var broken = Sql.rows(connection, row -> row.getString(1), "PRAGMA foreign_key_check");
    if (!broken.isEmpty()) {
      throw new SQLException(
          "rows without what they refer to in " + broken.get(0),
          "",
          SQLiteErrorCode.SQLITE_CORRUPT.code);
    }
  }

  private void refuseNewer(String what, Path file, int version) {
    if (version > version()) {
      throw new StoreException(
          what
              + ": "
              + file
              + " has schema version "
              + version
              + " and this Calamus knows versions up to "
              + version()
              + "; start the newer Calamus or give another folder with --data");
    }
  }

  private static StoreException foreign(String what, Path file) {
    return new StoreException(
        what + ": " + file + " is a database of another program; give another folder with --data");
  }

  private static String text(String resource) {
    try (InputStream in = Schema.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the jar lacks " + resource);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("the jar cannot be read at " + resource, e);
    }
  }
}
