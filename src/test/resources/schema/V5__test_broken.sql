ALTER TABLE capture_record ADD COLUMN remark TEXT NOT NULL DEFAULT '';
INSERT INTO no_such_table VALUES (1);
