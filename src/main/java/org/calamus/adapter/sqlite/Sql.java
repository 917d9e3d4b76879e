package org.calamus.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * Short ways to run a statement and close it: one left open makes the next commit fail with
 * SQLITE_BUSY.
 */
final class Sql {

  private Sql() {}

  /** What to do with a connection. */
  @FunctionalInterface
  interface Work<T> {
    T on(Connection connection) throws SQLException;
  }

  /** Makes a value of the row that the cursor stands on. */
  @FunctionalInterface
  interface RowReader<T> {
    T read(ResultSet row) throws SQLException;
  }

  /** Looks at the row that the cursor stands on. */
  @FunctionalInterface
  interface RowLook {
    void at(ResultSet row) throws SQLException;
  }

  /** Runs one or several statements that answer nothing. */
  static void run(Connection connection, String script) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(script);
    }
  }

  /** Adds a row; the parameters are texts and whole numbers. Tells its sequence number. */
  static long insert(Connection connection, String sql, Object... parameters) throws SQLException {
    try (PreparedStatement statement = prepared(connection, sql, parameters)) {
      statement.executeUpdate();
    }
    return number(connection, "SELECT last_insert_rowid()");
  }

  /** The number in the first column of the first row. */
  static long number(Connection connection, String sql, Object... parameters) throws SQLException {
    return rows(connection, row -> row.getLong(1), sql, parameters).get(0);
  }

  /** All rows of an answer. */
  static <T> List<T> rows(
      Connection connection, RowReader<T> reader, String sql, Object... parameters)
      throws SQLException {
    List<T> all = new ArrayList<>();
    each(connection, row -> all.add(reader.read(row)), sql, parameters);
    return all;
  }

  /** Looks at all rows of an answer one by one, of which none is kept. */
  static void each(Connection connection, RowLook look, String sql, Object... parameters)
      throws SQLException {
    try (PreparedStatement statement = prepared(connection, sql, parameters);
        ResultSet answer = statement.executeQuery()) {
      while (answer.next()) {
        look.at(answer);
      }
    }
  }

  /**
   * Does the work in one transaction, or nothing of it. Where even taking back fails the connection
   * is closed.
   */
  static <T> T transaction(Connection connection, Work<T> work) throws SQLException {
    // IMMEDIATE: waits for a foreign writer here, where waiting is safe, not in mid-transaction
    run(connection, "BEGIN IMMEDIATE");
    boolean isCommitted = false;
    try {
      T result = work.on(connection);
      run(connection, "COMMIT");
      isCommitted = true;
      return result;
    } finally {
      if (!isCommitted) {
        rollBack(connection);
      }
    }
  }

  private static void rollBack(Connection connection) throws SQLException {
    try {
      run(connection, "ROLLBACK");
    } catch (SQLException e) {
      // after some errors SQLite has rolled back by itself and says that there is nothing to undo;
      // a connection that can begin again is in order, the other kind must not be used further
      if (!canBegin(connection)) {
        connection.close();
      }
    }
  }

  private static boolean canBegin(Connection connection) {
    try {
      run(connection, "BEGIN");
      run(connection, "ROLLBACK");
      return true;
    } catch (SQLException e) {
      return false;
    }
  }

  private static PreparedStatement prepared(Connection connection, String sql, Object... parameters)
      throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    for (int i = 0; i < parameters.length; i++) {
      statement.setObject(i + 1, parameters[i]);
    }
    return statement;
  }
}
