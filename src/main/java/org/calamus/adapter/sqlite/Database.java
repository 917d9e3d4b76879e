package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;
import org.calamus.port.RecordStore.StoreException;

/**
 * The one connection to the file, which is opened again by itself after a failure that cost it. All
 * failures leave here as {@link StoreException}.
 */
final class Database implements AutoCloseable {

  static final String FILE_NAME = "calamus.db";

  /** For a foreign program that reads or copies; the engine waits meanwhile. A design decision. */
  private static final int BUSY_MILLIS = 2000;

  /** Checking this much takes a few hundredths of a second; larger files are checked on demand. */
  private static final long CHECKED_AT_START_BYTES = 4L * 1024 * 1024;

  private final Path file;
  private final Schema schema;
  private Optional<Connection> open = Optional.empty();
  private Optional<Object> identity = Optional.empty();
  private boolean isClosed = false;

  private Database(Path file, Schema schema) {
    this.file = file;
    this.schema = schema;
  }

  /** Opens the file of a folder whose lock is held, makes or brings up the tables. */
  static Database open(Path folder, Schema schema) throws IOException {
    String what = "The records cannot be opened";
    Database database = new Database(folder.resolve(FILE_NAME), schema);
    schema.checkHeader(what, database.file);
    boolean isGood = false;
    try {
      database.read(what, c -> database.checkedWhereSmall(what, c));
      isGood = true;
      return database;
    } finally {
      if (!isGood) {
        database.close();
      }
    }
  }

  /**
   * Looks at the file without writing to it or its folder.
   *
   * @param what what is not done where this fails
   */
  static <T> T inspect(String what, Path file, Sql.Work<T> work) {
    try (Connection connection = DriverManager.getConnection(url(file) + way(file))) {
      Sql.run(connection, "PRAGMA busy_timeout = " + BUSY_MILLIS);
      return answer(what, file, connection, work);
    } catch (SQLException e) {
      throw Failure.ofDatabase(what, file, e);
    }
  }

  /** Throws where SQLite finds the file damaged. */
  static Connection checked(String what, Path file, Connection connection) throws SQLException {
    String found = Sql.rows(connection, row -> row.getString(1), "PRAGMA quick_check(1)").get(0);
    if (!found.equals("ok")) {
      throw Failure.damaged(what, file, new IOException(found));
    }
    return connection;
  }

  /**
   * Reads.
   *
   * @param what what is not done where this fails, such as {@code Record 12 is not saved}
   */
  <T> T read(String what, Sql.Work<T> work) {
    try {
      return answer(what, file, connection(what), work);
    } catch (SQLException e) {
      throw Failure.ofDatabase(what, file, e);
    }
  }

  /**
   * Writes in one transaction, which is durable when this returns.
   *
   * @param what what is not done where this fails
   */
  void write(String what, Sql.Work<?> work) {
    read(
        what,
        connection -> {
          refuseStranger(what);
          return Sql.transaction(connection, work);
        });
  }

  /** Closes the connection; SQLite moves the log into the file then. */
  @Override
  public void close() {
    isClosed = true;
    try {
      if (open.isPresent()) {
        open.get().close();
      }
    } catch (SQLException e) {
      throw Failure.ofDatabase("The records are safe but not put away", file, e);
    } finally {
      open = Optional.empty();
    }
  }

  private Connection checkedWhereSmall(String what, Connection connection) throws SQLException {
    boolean isSmall =
        Sql.number(
                connection,
                "SELECT page_count * page_size FROM pragma_page_count, pragma_page_size")
            <= CHECKED_AT_START_BYTES;
    return isSmall ? checked(what, file, connection) : connection;
  }

  private static <T> T answer(String what, Path file, Connection connection, Sql.Work<T> work)
      throws SQLException {
    try {
      return work.on(connection);
    } catch (DateTimeException | IllegalArgumentException | NoSuchElementException e) {
      // a column holds what Calamus never wrote
      throw Failure.damaged(what, file, e);
    }
  }

  private Connection connection(String what) throws SQLException {
    if (open.isPresent() && !open.get().isClosed()) {
      return open.get();
    }
    if (isClosed) {
      // the folder may be another process's by now
      throw new IllegalStateException("the store is closed");
    }
    if (identity.isPresent()) {
      // opened before: SQLite would make an empty file in the place of a missing one
      refuseStranger(what);
    }
    Connection connection = DriverManager.getConnection(url(file));
    boolean isReady = false;
    try {
      prepare(what, connection);
      identity = identity();
      open = Optional.of(connection);
      isReady = true;
      return connection;
    } finally {
      if (!isReady) {
        connection.close();
      }
    }
  }

  private void prepare(String what, Connection connection) throws SQLException {
    Sql.run(connection, "PRAGMA busy_timeout = " + BUSY_MILLIS);
    int version = schema.check(what, file, connection);
    Sql.rows(connection, row -> row.getString(1), "PRAGMA journal_mode = WAL");
    // FULL: each commit is synced. NORMAL may lose the last ones with the power (SQLite, "PRAGMA
    // synchronous"). fullfsync reaches through the cache of the drive on macOS, where fsync does
    // not; elsewhere it does nothing.
    Sql.run(
        connection,
        "PRAGMA synchronous = FULL; PRAGMA fullfsync = ON; PRAGMA checkpoint_fullfsync = ON;"
            + " PRAGMA temp_store = MEMORY");
    schema.bringUp(connection, version);
    Sql.run(connection, "PRAGMA foreign_keys = ON");
  }

  /** On Unix an open file that was moved or deleted still takes what is written, to no avail. */
  private void refuseStranger(String what) {
    if (!identity().equals(identity)) {
      throw Failure.moved(what, file);
    }
  }

  private Optional<Object> identity() {
    try {
      BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
      return Optional.of(Objects.requireNonNullElse(attributes.fileKey(), "no key on this system"));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** A file without a log is whole by itself: SQLite then need not make an index to read it. */
  private static String way(Path file) {
    try {
      Path log = file.resolveSibling(FILE_NAME + "-wal");
      return Files.exists(log) && Files.size(log) > 0 ? "?mode=ro" : "?immutable=1";
    } catch (IOException e) {
      // the log went away between the two questions: it has just been moved into the file
      return "?immutable=1";
    }
  }

  /** As a URI, since a plain name would be cut at a question mark. */
  private static String url(Path file) {
    return "jdbc:sqlite:" + file.toUri();
  }
}
