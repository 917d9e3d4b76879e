package org.calamus.adapter.sqlite;

import java.util.List;

/** Looks into the tables on the store's own connection. */
final class Look {

  private Look() {}

  /** The first column of every row, as text. */
  static List<String> texts(SqliteRecordStore store, String sql) {
    return store.onConnection(c -> Sql.rows(c, row -> row.getString(1), sql));
  }

  /** Runs a statement that answers nothing, such as a setting of the connection. */
  static void run(SqliteRecordStore store, String sql) {
    store.onConnection(
        c -> {
          Sql.run(c, sql);
          return sql;
        });
  }

  /** The number in the first row. */
  static long number(SqliteRecordStore store, String sql) {
    return store.onConnection(c -> Sql.number(c, sql));
  }
}
