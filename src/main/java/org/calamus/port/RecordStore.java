package org.calamus.port;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;

/**
 * Keeps the records. A method that returns has made its change durable: it survives the process
 * being killed and the power failing.
 *
 * <pre>{@code
 * store.journal(record, FieldId.WING, entry);   // safe now
 * store.save(record);                           // only then is "saved" said
 * }</pre>
 *
 * Used from the engine's thread only. Every method throws {@link StoreException} where it cannot do
 * its work; what was stored before is untouched then.
 */
public interface RecordStore extends AutoCloseable {

  /** The number the next new record shall have. */
  long nextRecordId();

  /** The record that was begun and neither saved nor abandoned, newest first if several. */
  Optional<CaptureRecord> unfinished();

  /** Journals an accepted value; begins the record where it is new. */
  void journal(CaptureRecord record, FieldId field, Entry entry);

  /** Journals that a field was emptied. */
  void journalErased(CaptureRecord record, FieldId field, Instant at);

  /** Commits the record as saved, in one transaction. */
  void save(CaptureRecord record, Instant at);

  /** Marks an unfinished record as abandoned. Its journal stays. */
  void abandon(CaptureRecord record, Instant at);

  /** The saved records as they were saved or corrected last, in the order of their first save. */
  List<CaptureRecord> saved();

  /**
   * A record as it was saved or corrected last, whatever was journalled since.
   *
   * @return empty where it was never saved, or abandoned later
   */
  Optional<CaptureRecord> asSaved(long id);

  /**
   * A record as it was saved first, before any correction.
   *
   * @return empty where it was never saved
   */
  Optional<CaptureRecord> original(long id);

  /**
   * Commits the correction of a saved record, in one transaction with what it says of other bands.
   *
   * @param record the record as it shall be
   * @param why why, and by whom
   * @param accounts records without a bird, of the bands that the correction left over; may be none
   * @param at when
   */
  void amend(CaptureRecord record, Amendment.Why why, List<CaptureRecord> accounts, Instant at);

  /** Gives up the correction of a saved record, which stays as it was. Its journal stays. */
  void withdraw(long id, Instant at);

  /** Stores that nets were opened or closed, all or none; those it has are not stored twice. */
  void journalNets(List<NetEvent> events);

  /** When nets were opened and closed, in the order in which that was entered. */
  List<NetEvent> netEvents();

  /** What corrections changed in a record, oldest first; none where it was never corrected. */
  List<Amendment> amendments(long id);

  /**
   * The saved records without how their values came in, in the same order as {@link #saved}; made
   * for tens of thousands of them.
   */
  List<PastCapture> pastCaptures();

  @Override
  void close();

  /** The store could not do its work; the message is one sentence for the user. */
  final class StoreException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Made with one sentence: what is wrong and what to do next. */
    public StoreException(String sentence, Throwable cause) {
      super(sentence, cause);
    }

    /** Made with one sentence where no other exception lies behind it. */
    public StoreException(String sentence) {
      super(sentence);
    }
  }
}
