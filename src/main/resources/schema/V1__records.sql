-- The history of every capture record. Rows are only ever added: a correction is a new row that
-- supersedes an older one, and what became of a record is a row of its own.
-- Instants are UTC, ISO 8601 with milliseconds. Measured amounts are text, with the digits as received.

CREATE TABLE capture_record (
  id          INTEGER PRIMARY KEY CHECK (id > 0),
  captured_at TEXT NOT NULL,
  place       TEXT NOT NULL,
  bander      TEXT NOT NULL
) STRICT;

-- One row for each value accepted into a field, and for each time a field was emptied.
CREATE TABLE journal (
  sequence   INTEGER PRIMARY KEY,
  record_id  INTEGER NOT NULL REFERENCES capture_record (id),
  field      TEXT NOT NULL,
  supersedes INTEGER UNIQUE REFERENCES journal (sequence),
  kind       TEXT NOT NULL CHECK (kind IN ('band', 'code', 'measure', 'erased')),
  text       TEXT NOT NULL CHECK ((text = '') = (kind = 'erased')),
  unit       TEXT NOT NULL CHECK ((unit <> '') = (kind = 'measure')),
  way        TEXT NOT NULL CHECK ((way = '') = (kind = 'erased')),
  detail     TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;

CREATE INDEX journal_by_field ON journal (record_id, field);

-- The rules that doubted a value and were overruled by the bander.
CREATE TABLE confirmed_rule (
  sequence INTEGER NOT NULL REFERENCES journal (sequence),
  position INTEGER NOT NULL,
  rule     TEXT NOT NULL,
  PRIMARY KEY (sequence, position)
) STRICT, WITHOUT ROWID;

-- What became of a record; one without a row here is open. journal_sequence is the last row of the
-- journal that the event covers.
CREATE TABLE record_event (
  sequence         INTEGER PRIMARY KEY,
  record_id        INTEGER NOT NULL REFERENCES capture_record (id),
  what             TEXT NOT NULL CHECK (what IN ('saved', 'abandoned', 'reopened')),
  at               TEXT NOT NULL,
  journal_sequence INTEGER NOT NULL
) STRICT;

CREATE INDEX record_event_by_record ON record_event (record_id);

CREATE TRIGGER capture_record_is_never_changed BEFORE UPDATE ON capture_record
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER capture_record_is_never_deleted BEFORE DELETE ON capture_record
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER journal_is_never_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER journal_is_never_deleted BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER confirmed_rule_is_never_changed BEFORE UPDATE ON confirmed_rule
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER confirmed_rule_is_never_deleted BEFORE DELETE ON confirmed_rule
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER record_event_is_never_changed BEFORE UPDATE ON record_event
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER record_event_is_never_deleted BEFORE DELETE ON record_event
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
