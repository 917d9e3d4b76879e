package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.port.RecordStore;

/**
 * Keeps the records in the file {@code calamus.db} of a folder, which it holds alone until closed.
 *
 * <p>Rows are only ever added: the journal is the truth, and a record is what its journal adds up
 * to. A method that writes is one transaction, and each transaction one sync of the disk; writing
 * the same again writes nothing, so a call that failed may simply be repeated. Instants are kept to
 * the millisecond.
 *
 * <p>A journalled value opens a saved or abandoned record again. Until it is saved or amended again
 * {@link #saved} gives it as it was; withdrawn, it stays so, and abandoned, it leaves the saved
 * ones.
 */
public final class SqliteRecordStore implements RecordStore {

  private final FolderLock lock;
  private final Database database;

  /**
   * Opens the store, made where it is missing.
   *
   * @param folder where the records are; made where it is missing
   * @param nativeFolder where the driver unpacks its native library; made where it is missing, may
   *     be emptied between two sessions
   * @throws StoreException where another process uses the folder, or it cannot be used
   */
  public SqliteRecordStore(Path folder, Path nativeFolder) {
    this(folder, nativeFolder, Schema.CURRENT);
  }

  SqliteRecordStore(Path folder, Path nativeFolder, Schema schema) {
    prepare(folder);
    prepareNative(nativeFolder);
    try {
      lock = FolderLock.take(folder);
    } catch (IOException e) {
      throw Failure.ofFolder(folder, e);
    }
    database = opened(folder, schema);
  }

  /**
   * Looks at a folder and its records for damage. Takes no lock and changes nothing in the folder,
   * so another Calamus may be using it.
   *
   * @param folder the data folder, which may be missing
   * @param nativeFolder as for the constructor
   * @return one line for the user: records, schema version, size, free space, who uses it
   * @throws StoreException where the records cannot be read or are damaged
   */
  public static String health(Path folder, Path nativeFolder) {
    prepareNative(nativeFolder);
    return Health.of(folder);
  }

  @Override
  public long nextRecordId() {
    return database.read("The next record has no number", c -> new History(c).nextId());
  }

  @Override
  public Optional<CaptureRecord> unfinished() {
    return database.read("The last record cannot be read", c -> new History(c).newestOpen());
  }

  @Override
  public void journal(CaptureRecord record, FieldId field, Entry entry) {
    CaptureRecord full = record.with(field, entry);
    database.write(
        notStored(record, field),
        c -> {
          History history = new History(c);
          bringUp(history, full, entry.at());
          return history;
        });
  }

  @Override
  public void journalErased(CaptureRecord record, FieldId field, Instant at) {
    CaptureRecord rest = record.without(field);
    database.write(
        notStored(record, field),
        c -> {
          History history = new History(c);
          if (rest.entries().isEmpty() && !isKnown(history, rest)) {
            // nothing was ever stored of it, so there is nothing to empty
            return history;
          }
          bringUp(history, rest, at);
          if (history.current(record.id()).containsKey(field)) {
            reopen(history, record.id(), at);
            history.append(record.id(), JournalRow.erased(field, at));
          }
          return history;
        });
  }

  @Override
  public void save(CaptureRecord record, Instant at) {
    database.write(
        "Record " + record.id() + " is not saved",
        c -> {
          History history = new History(c);
          bringUp(history, record, at);
          eraseOthers(history, record, at);
          addUnlessLast(history, History.Event.SAVED, record.id(), at);
          return history;
        });
  }

  @Override
  public void amend(
      CaptureRecord record, Amendment.Why why, List<CaptureRecord> accounts, Instant at) {
    database.write(
        "The correction of record " + record.id() + " is not saved",
        c -> {
          History history = new History(c);
          for (CaptureRecord account : accounts) {
            bringUp(history, account, at);
            addUnlessLast(history, History.Event.SAVED, account.id(), at);
          }
          bringUp(history, record, at);
          eraseOthers(history, record, at);
          if (!history.isLast(History.Event.SAVED, record.id())) {
            new Amendments(c).add(record.id(), why, at);
            history.add(record.id(), History.Event.SAVED, at);
          }
          return history;
        });
  }

  @Override
  public void withdraw(long id, Instant at) {
    database.write(
        "The correction of record " + id + " is not given up",
        c -> {
          History history = new History(c);
          Optional<CaptureRecord> saved = history.saved(id);
          if (saved.isPresent() && history.isLast(History.Event.REOPENED, id)) {
            // the journal adds up to the saved record again
            bringUp(history, saved.get(), at);
            eraseOthers(history, saved.get(), at);
            history.add(id, History.Event.WITHDRAWN, at);
          }
          return history;
        });
  }

  @Override
  public Optional<CaptureRecord> asSaved(long id) {
    return database.read("Record " + id + " cannot be read", c -> new History(c).saved(id));
  }

  @Override
  public Optional<CaptureRecord> original(long id) {
    return database.read("Record " + id + " cannot be read", c -> new History(c).savedFirst(id));
  }

  @Override
  public List<Amendment> amendments(long id) {
    return database.read(
        "The corrections of record " + id + " cannot be read", c -> new Amendments(c).of(id));
  }

  @Override
  public void journalNets(List<NetEvent> events) {
    database.write(
        "When the nets were " + events.get(0).what().word() + " is not stored",
        c -> {
          NetEvents nets = new NetEvents(c);
          nets.add(events);
          return nets;
        });
  }

  @Override
  public List<NetEvent> netEvents() {
    return database.read("The times of the nets cannot be read", c -> new NetEvents(c).all());
  }

  @Override
  public void abandon(CaptureRecord record, Instant at) {
    database.write(
        "Record " + record.id() + " is not abandoned",
        c -> {
          History history = new History(c);
          if (isKnown(history, record)) {
            addUnlessLast(history, History.Event.ABANDONED, record.id(), at);
          }
          return history;
        });
  }

  @Override
  public List<CaptureRecord> saved() {
    return database.read("The saved records cannot be read", c -> new History(c).saved());
  }

  @Override
  public List<PastCapture> pastCaptures() {
    return database.read("The saved records cannot be read", c -> new PastReading(c).all());
  }

  /** Closes the file and lets go of the folder. What was stored is safe without it. */
  @Override
  public void close() {
    try (lock) {
      database.close();
    } catch (IOException e) {
      // the system lets go of the folder with the end of the process
    }
  }

  /** For tests: works on the store's own connection, as a full disk or another failure would. */
  <T> T onConnection(Sql.Work<T> work) {
    return database.read("The connection cannot be used", work);
  }

  /**
   * Adds to the journal what the record holds and the journal lacks. That is more than the value
   * just accepted where an earlier call failed, so that no value stays behind.
   */
  private static void bringUp(History history, CaptureRecord record, Instant at)
      throws SQLException {
    if (!isKnown(history, record)) {
      history.begin(record);
    }
    Map<FieldId, JournalRow> stored = history.current(record.id());
    for (Map.Entry<FieldId, Entry> field : record.entries().entrySet()) {
      JournalRow row = JournalRow.of(field.getKey(), field.getValue());
      if (!row.equals(stored.get(field.getKey()))) {
        reopen(history, record.id(), at);
        history.append(record.id(), row);
      }
    }
  }

  /** Empties the fields that the record does not have. */
  private static void eraseOthers(History history, CaptureRecord record, Instant at)
      throws SQLException {
    for (FieldId field : history.current(record.id()).keySet()) {
      if (record.entry(field).isEmpty()) {
        reopen(history, record.id(), at);
        history.append(record.id(), JournalRow.erased(field, at));
      }
    }
  }

  private static void addUnlessLast(History history, History.Event event, long id, Instant at)
      throws SQLException {
    if (!history.isLast(event, id)) {
      history.add(id, event, at);
    }
  }

  private static void reopen(History history, long id, Instant at) throws SQLException {
    if (history.isLast(History.Event.SAVED, id)
        || history.isLast(History.Event.ABANDONED, id)
        || history.isLast(History.Event.WITHDRAWN, id)) {
      history.add(id, History.Event.REOPENED, at);
    }
  }

  private static boolean isKnown(History history, CaptureRecord record) throws SQLException {
    Optional<String> begun = history.begunAt(record.id());
    begun.ifPresent(
        at -> {
          if (!at.equals(JournalRow.text(record.capturedAt()))) {
            throw new IllegalStateException("two birds with the number " + record.id());
          }
        });
    return begun.isPresent();
  }

  private static String notStored(CaptureRecord record, FieldId field) {
    return "Record "
        + record.id()
        + ", "
        + field.name().toLowerCase(Locale.ROOT)
        + ", is not stored";
  }

  private Database opened(Path folder, Schema schema) {
    boolean isOpen = false;
    try {
      Database result = Database.open(folder, schema);
      isOpen = true;
      return result;
    } catch (IOException e) {
      throw Failure.ofFolder(folder, e);
    } finally {
      if (!isOpen) {
        letGo();
      }
    }
  }

  private void letGo() {
    try {
      lock.close();
    } catch (IOException e) {
      // the reason why the store did not open is the one to tell
    }
  }

  private static void prepare(Path folder) {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw Failure.ofFolder(folder, e);
    }
  }

  private static void prepareNative(Path folder) {
    try {
      NativeLibrary.unpackTo(folder);
    } catch (IOException e) {
      throw Failure.ofNativeFolder(folder, e);
    }
  }
}
