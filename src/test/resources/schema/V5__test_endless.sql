INSERT INTO capture_record (id, captured_at, place, bander)
  WITH RECURSIVE n (i) AS (SELECT 1000000 UNION ALL SELECT i + 1 FROM n)
  SELECT i, '2026-05-03T04:10:00.250Z', 'Fenwick Marsh', 'QX' FROM n;
