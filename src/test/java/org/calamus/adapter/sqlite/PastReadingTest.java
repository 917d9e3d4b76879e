package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.port.RecordStore.StoreException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The light captures are what the whole records are, without their provenance. */
class PastReadingTest {

  @TempDir Path folder;
  @TempDir Path natives;
  private SqliteRecordStore store;

  @BeforeEach
  void open() {
    store = new SqliteRecordStore(folder, natives);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void newStoreHasNone() {
    assertThat(store.pastCaptures()).isEmpty();
  }

  @Test
  void everyKindOfValueComesBack() {
    CaptureRecord bird =
        Birds.banded(1)
            .with(FieldId.SPECIES, Birds.code("WBNU"))
            .with(FieldId.HOW_AGED, Birds.keyed(new FieldValue.Codes(List.of("P", "S"))))
            .with(FieldId.MASS, Birds.mass("22.30"))
            .with(FieldId.TIME, Birds.keyed(new FieldValue.TimeOfDay(LocalTime.of(8, 40))))
            .with(FieldId.NOTE, Birds.keyed(new FieldValue.Note("", Optional.of("1-1.wav"))));
    store.save(bird, Birds.later(60));
    assertThat(store.pastCaptures()).containsExactly(PastCapture.of(bird));
  }

  @Test
  void allAreThoseThatAreSavedInTheirOrder() {
    Entry doubted =
        new Entry(
            Birds.wing("92").value(), Birds.wing("92").provenance(), Birds.later(9), List.of("a"));
    store.journal(Birds.banded(1), FieldId.BAND, Birds.band(1));
    store.save(Birds.banded(2).with(FieldId.WING, doubted), Birds.later(50));
    store.save(Birds.banded(1).with(FieldId.SEX, Birds.code("F")), Birds.later(60));
    store.save(Birds.banded(3), Birds.later(70));
    // reopened: it stays as it was saved, here and there
    store.journal(Birds.banded(2), FieldId.WING, Birds.wing("73"));
    store.journalErased(Birds.banded(1), FieldId.SEX, Birds.later(80));
    store.save(Birds.banded(1), Birds.later(81));
    store.journal(Birds.banded(3), FieldId.SEX, Birds.code("M"));
    store.abandon(Birds.banded(3), Birds.later(90));
    store.journal(Birds.banded(4), FieldId.BAND, Birds.band(4));
    List<PastCapture> past = store.pastCaptures();
    assertThat(past).isEqualTo(store.saved().stream().map(PastCapture::of).toList());
    assertThat(past).extracting(PastCapture::id).containsExactly(2L, 1L);
    assertThat(past.get(0).doubted()).containsExactly(FieldId.WING);
    store.save(Birds.banded(2).with(FieldId.WING, Birds.wing("73")), Birds.later(95));
    assertThat(store.pastCaptures().get(0).doubted()).isEmpty();
  }

  @Test
  void sameValuesAreHeldOnce() {
    store.save(Birds.banded(1).with(FieldId.WING, Birds.wing("92.0")), Birds.later(60));
    store.save(Birds.banded(2).with(FieldId.WING, Birds.wing("92.0")), Birds.later(70));
    List<PastCapture> past = store.pastCaptures();
    assertThat(past.get(0).values().get(FieldId.WING))
        .isSameAs(past.get(1).values().get(FieldId.WING));
  }

  @Test
  void columnWithWhatCalamusNeverWroteIsDamage() throws SQLException {
    store.save(Birds.banded(1), Birds.later(60));
    try (var c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("calamus.db"))) {
      Sql.run(
          c,
          "INSERT INTO journal VALUES (50, 1, 'WING', null, 'measure', 'long', 'mm', '', 'said', '',"
              + " '2026-05-03T04:10:00.250Z'); INSERT INTO record_event VALUES (60, 1, 'saved',"
              + " '2026-05-03T04:10:00.250Z', 50)");
    }
    assertThatThrownBy(store::pastCaptures)
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("is damaged");
  }
}
