package org.calamus.adapter.lanterna;

/**
 * Which rows belong to what, from the top down: station and mode, health, a line, what is asked,
 * the large value, the notices (message, question, parts that are down), the record, the last saved
 * records, the hints, the counts. Depends on the size and the number of fields only, so that
 * nothing moves while a record is taken.
 *
 * @param asked the row of what is asked
 * @param big the first row of the large value
 * @param bigScale 1, or 2 where the large value is drawn at twice the size
 * @param notices the first row of the notices
 * @param noticeRows their number
 * @param record the first row of the fields
 * @param recordRows their number; fewer than the fields where there is no room
 * @param isTitled whether a title line stands above the record
 * @param recent the first row of the last saved records, which is a title line
 * @param recentRows their number with the title; 0 where there is no room
 * @param hints the first row of the hints
 * @param hintRows their number
 * @param counts the row of the timer and the counts
 */
record Layout(
    int asked,
    int big,
    int bigScale,
    int notices,
    int noticeRows,
    int record,
    int recordRows,
    boolean isTitled,
    int recent,
    int recentRows,
    int hints,
    int hintRows,
    int counts) {

  /** The least window, in columns, in which everything can be shown, though not all of it whole. */
  static final int LEAST_WIDTH = 60;

  /** The least window in rows. */
  static final int LEAST_HEIGHT = 20;

  static final int TOP = 0;
  static final int HEALTH = 1;
  static final int LINE = 2;

  private static final int ASKED = 3;
  private static final int LEAST_NOTICES = 3;
  private static final int USUAL_NOTICES = 7;
  private static final int MOST_RECENT = 7;
  private static final int LEAST_RECENT = 3;

  static boolean isTooSmall(int width, int height) {
    return width < LEAST_WIDTH || height < LEAST_HEIGHT;
  }

  static Layout of(int width, int height, int fields) {
    int bigScale = height >= 34 && width >= 100 ? 2 : 1;
    int hintRows = height >= 30 ? 2 : 1;
    int titleRows = height >= 27 ? 1 : 0;
    int big = ASKED + 1;
    int notices = big + BigGlyphs.ROWS * bigScale;
    int hints = height - 1 - hintRows;

    int room = hints - notices - titleRows;
    int recordRows = Math.min(fields, Math.max(room - LEAST_NOTICES, 1));
    int free = room - recordRows;
    int recentRows = height >= 30 ? Math.min(free - USUAL_NOTICES, MOST_RECENT) : 0;
    recentRows = recentRows < LEAST_RECENT ? 0 : recentRows;
    int noticeRows = free - recentRows;
    int record = notices + noticeRows + titleRows;
    return new Layout(
        ASKED,
        big,
        bigScale,
        notices,
        noticeRows,
        record,
        recordRows,
        titleRows > 0,
        record + recordRows,
        recentRows,
        hints,
        hintRows,
        height - 1);
  }
}
