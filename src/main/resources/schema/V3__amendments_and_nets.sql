-- Corrections of saved records, and when the nets were open. Rows are only ever added here, too.

-- One more thing becomes of a record: a correction of it was withdrawn, and it stays as it was saved
-- last. SQLite changes no check of a table that exists (SQLite, "ALTER TABLE" 7), so the events are
-- copied into a new table which takes the name.
CREATE TABLE record_event_v3 (
  sequence         INTEGER PRIMARY KEY,
  record_id        INTEGER NOT NULL REFERENCES capture_record (id),
  what             TEXT NOT NULL CHECK (what IN ('saved', 'abandoned', 'reopened', 'withdrawn')),
  at               TEXT NOT NULL,
  journal_sequence INTEGER NOT NULL
) STRICT;

INSERT INTO record_event_v3 (sequence, record_id, what, at, journal_sequence)
  SELECT sequence, record_id, what, at, journal_sequence FROM record_event ORDER BY sequence;

-- the triggers and the index of the old table go with it
DROP TABLE record_event;
ALTER TABLE record_event_v3 RENAME TO record_event;

CREATE INDEX record_event_by_record ON record_event (record_id);

CREATE TRIGGER record_event_is_never_changed BEFORE UPDATE ON record_event
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER record_event_is_never_deleted BEFORE DELETE ON record_event
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;

-- What a correction changed in a saved record, one row a field. Both entries are rows of the journal:
-- the old one is null where the field was empty, the new one is an "erased" row where it was emptied.
CREATE TABLE amendment (
  sequence    INTEGER PRIMARY KEY,
  record_id   INTEGER NOT NULL REFERENCES capture_record (id),
  field       TEXT NOT NULL,
  old_journal INTEGER REFERENCES journal (sequence),
  new_journal INTEGER NOT NULL REFERENCES journal (sequence),
  reason      TEXT NOT NULL CHECK (reason IN
    ('misheard', 'miskeyed', 'misread', 'wrong-field', 'identified-anew', 'other')),
  memo        TEXT NOT NULL,
  bander      TEXT NOT NULL CHECK (bander <> ''),
  at          TEXT NOT NULL,
  CHECK (old_journal IS NULL OR old_journal <> new_journal)
) STRICT;

CREATE INDEX amendment_by_record ON amendment (record_id);

CREATE TRIGGER amendment_is_never_changed BEFORE UPDATE ON amendment
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER amendment_is_never_deleted BEFORE DELETE ON amendment
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;

-- A net was opened or closed. One whose time was corrected is superseded by the row with the right one.
CREATE TABLE net_event (
  sequence   INTEGER PRIMARY KEY CHECK (sequence > 0),
  net        TEXT NOT NULL CHECK (net <> ''),
  what       TEXT NOT NULL CHECK (what IN ('opened', 'closed')),
  at         TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  bander     TEXT NOT NULL CHECK (bander <> ''),
  supersedes INTEGER UNIQUE REFERENCES net_event (sequence),
  CHECK (supersedes < sequence)
) STRICT;

CREATE TRIGGER net_event_is_never_changed BEFORE UPDATE ON net_event
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER net_event_is_never_deleted BEFORE DELETE ON net_event
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
