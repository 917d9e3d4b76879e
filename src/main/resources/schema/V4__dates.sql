-- One more kind of value: a day, as the date of a capture that was entered later.
-- SQLite changes no check of a table that exists (SQLite, "ALTER TABLE" 7): the journal is copied
-- into a new table which takes its name. Foreign keys are off meanwhile and checked behind this.

CREATE TABLE journal_v4 (
  sequence   INTEGER PRIMARY KEY,
  record_id  INTEGER NOT NULL REFERENCES capture_record (id),
  field      TEXT NOT NULL,
  supersedes INTEGER UNIQUE REFERENCES journal_v4 (sequence),
  kind       TEXT NOT NULL
    CHECK (kind IN ('band', 'code', 'codes', 'measure', 'time', 'date', 'note', 'erased')),
  text       TEXT NOT NULL CHECK (text <> '' OR kind IN ('erased', 'note')),
  unit       TEXT NOT NULL CHECK ((unit <> '') = (kind = 'measure')),
  memo       TEXT NOT NULL CHECK (memo = '' OR kind = 'note'),
  way        TEXT NOT NULL CHECK ((way = '') = (kind = 'erased')),
  detail     TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  CHECK (kind <> 'erased' OR text = ''),
  CHECK (kind <> 'note' OR text <> '' OR memo <> '')
) STRICT;

INSERT INTO journal_v4 (sequence, record_id, field, supersedes, kind, text, unit, memo, way, detail,
    entered_at)
  SELECT sequence, record_id, field, supersedes, kind, text, unit, memo, way, detail, entered_at
  FROM journal ORDER BY sequence;

-- the triggers and the index of the old table go with it
DROP TABLE journal;
ALTER TABLE journal_v4 RENAME TO journal;

CREATE INDEX journal_by_field ON journal (record_id, field);

CREATE TRIGGER journal_is_never_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
CREATE TRIGGER journal_is_never_deleted BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'records are only ever added to'); END;
