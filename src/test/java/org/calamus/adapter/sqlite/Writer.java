package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.port.RecordStore.StoreException;

/**
 * The main class of a second process. Prints a line for each thing the store has acknowledged:
 * {@code open}, {@code journal ID FIELD TEXT}, {@code save ID}, or {@code refused SENTENCE}.
 */
final class Writer {

  private static final List<FieldId> ORDER =
      List.of(FieldId.BAND, FieldId.SPECIES, FieldId.AGE, FieldId.SEX, FieldId.WING, FieldId.MASS);

  private Writer() {}

  /** Brings a database up and never ends. */
  private static final Schema ENDLESS =
      new Schema(
          Stream.concat(
                  Schema.CURRENT.scripts().stream(), Stream.of("/schema/V5__test_endless.sql"))
              .toList());

  /**
   * Takes the data folder, the folder for natives and {@code write}, {@code amend}, {@code hold} or
   * {@code migrate for ever}.
   */
  public static void main(String[] args) throws IOException {
    Schema schema = args[2].equals("migrate for ever") ? ENDLESS : Schema.CURRENT;
    try (SqliteRecordStore store =
        new SqliteRecordStore(Path.of(args[0]), Path.of(args[1]), schema)) {
      say("open");
      if (args[2].equals("hold")) {
        System.in.read();
      } else if (args[2].equals("amend")) {
        amendForEver(store);
      } else {
        writeForEver(store);
      }
    } catch (StoreException e) {
      say("refused " + e.getMessage());
    }
  }

  private static void writeForEver(SqliteRecordStore store) {
    for (long id = store.nextRecordId(); ; id++) {
      CaptureRecord bird = Birds.empty(id);
      for (FieldId field : ORDER) {
        Entry entry = entry(id, field);
        bird = bird.with(field, entry);
        store.journal(bird, field, entry);
        say("journal " + id + " " + field + " " + entry.value().text());
      }
      store.save(bird, Birds.later(id));
      say("save " + id);
    }
  }

  /** Corrects the wing of the first record again and again. */
  private static void amendForEver(SqliteRecordStore store) {
    Amendment.Why why = new Amendment.Why(Amendment.Reason.MISREAD, Optional.empty(), "QX");
    for (int i = 1; ; i++) {
      Entry wing = Birds.wing(String.valueOf(100 + i));
      CaptureRecord record = store.asSaved(1).orElseThrow().with(FieldId.WING, wing);
      store.journal(record, FieldId.WING, wing);
      say("begun " + i);
      store.amend(record, why, List.of(), Birds.later(i));
      say("amend " + i);
    }
  }

  private static Entry entry(long id, FieldId field) {
    return switch (field) {
      case BAND -> Birds.band(id);
      case SPECIES, AGE, SEX -> Birds.code("C" + id);
      case WING -> Birds.wing(String.format(Locale.ROOT, "%d.50", id));
      case MASS -> Birds.mass(String.format(Locale.ROOT, "%d.30", id));
      default -> throw new AssertionError(field);
    };
  }

  private static void say(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
