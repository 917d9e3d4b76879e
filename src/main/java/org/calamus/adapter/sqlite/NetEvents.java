package org.calamus.adapter.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.effort.NetEvent;

/** Adds and reads when nets were opened and closed. */
final class NetEvents {

  private static final String COLUMNS = "sequence, net, what, at, entered_at, bander, supersedes";

  private final Connection connection;

  NetEvents(Connection connection) {
    this.connection = connection;
  }

  /** Adds those that are not there yet. */
  void add(List<NetEvent> events) throws SQLException {
    for (NetEvent event : events) {
      boolean isThere =
          Sql.number(connection, "SELECT count(*) FROM net_event WHERE sequence = ?", event.id())
              > 0;
      if (!isThere) {
        Sql.insert(
            connection,
            "INSERT INTO net_event (" + COLUMNS + ") VALUES (?, ?, ?, ?, ?, ?, ?)",
            event.id(),
            event.net(),
            event.what().word(),
            JournalRow.text(event.at()),
            JournalRow.text(event.enteredAt()),
            event.bander(),
            event.supersedes().orElse(null));
      }
    }
  }

  /** All, in the order in which they were entered. */
  List<NetEvent> all() throws SQLException {
    return List.copyOf(
        Sql.rows(
            connection,
            NetEvents::event,
            "SELECT " + COLUMNS + " FROM net_event ORDER BY sequence"));
  }

  private static NetEvent event(ResultSet row) throws SQLException {
    long superseded = row.getLong(7);
    return new NetEvent(
        row.getLong(1),
        row.getString(2),
        NetEvent.What.valueOf(row.getString(3).toUpperCase(Locale.ROOT)),
        Instant.parse(row.getString(4)),
        Instant.parse(row.getString(5)),
        row.getString(6),
        superseded == 0 ? Optional.empty() : Optional.of(superseded));
  }
}
