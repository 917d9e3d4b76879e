package org.calamus.adapter.lanterna;

/**
 * Which rows belong to what, from the top down: station and mode, health, a line, what is asked,
 * the large value, the notices (message, question, parts that are down), the pictures of the
 * measures (in a tall window behind the earlier captures), the record, the choices, the earlier
 * captures, the last saved records, the hints, the counts.
 *
 * <p>Where there is nothing to choose and no history the rows depend on the size and the number of
 * fields only, so that nothing moves while a record is taken. Choices and history first take the
 * room of the last saved records, then that of fields; then the choices stand closer together, and
 * while a question is open they are left out. Pictures take what the notices do not need, and in a
 * tall window that of the last saved records. Only where even that is too little, or the menu is
 * open, does the large value move into the row of what is asked.
 *
 * @param asked the row of what is asked
 * @param big the first row of the large value
 * @param bigScale 1, or 2 where the large value is drawn at twice the size; 0 where it has no rows
 *     and stands in the row of what is asked
 * @param notices the first row of the notices
 * @param noticeRows their number
 * @param pictures the first row of the pictures, which in a tall window is a title line
 * @param pictureRows their number; 0 where there is no room
 * @param record the first row of the fields
 * @param recordRows their number; fewer than the fields need where there is no room
 * @param recordColumns 1, or 2 where the fields stand in two columns
 * @param isTitled whether a title line stands above the record
 * @param choices the first row of the choices, which is a title line
 * @param choiceRows their number with the title; 0 where there are none
 * @param history the first row of the earlier captures, which is a title line
 * @param historyRows their number with the title; 0 where there are none
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
    int pictures,
    int pictureRows,
    int record,
    int recordRows,
    int recordColumns,
    boolean isTitled,
    int choices,
    int choiceRows,
    int history,
    int historyRows,
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

  static final int ASKED = 3;
  private static final int BIG = ASKED + 1;
  private static final int LEAST_NOTICES = 3;
  private static final int USUAL_NOTICES = 7;
  private static final int MOST_RECENT = 7;
  private static final int LEAST_RECENT = 3;

  /** A title, four measures and the mass over time: kept free, so that no field moves for them. */
  private static final int USUAL_PICTURES = 6;

  /** A title and one line. */
  private static final int LEAST_BLOCK = 2;

  private static final int MOST_HISTORY = 3;
  private static final int MOST_HISTORY_WHEN_TALL = 6;

  /** From here on two columns of fields have room for the longest label and a short value. */
  private static final int TWO_COLUMNS_WIDTH = 78;

  private static final int TALL = 30;

  /**
   * What a view would like to have room for.
   *
   * @param fields the fields of the record
   * @param leastFields how many of them must be seen in any case
   * @param notices the rows of message, question and parts that are down, without a frame
   * @param choices how many choices there are
   * @param choiceRows their rows where none of them is cut, without a title
   * @param fewestChoiceRows their rows where they stand as close as can be read, without a title
   * @param areChoicesAside whether they are not what is to be looked at now and may be left out
   * @param history the earlier captures
   * @param pictures the rows of the pictures, with a title in a tall window
   */
  record Wants(
      int fields,
      int leastFields,
      int notices,
      int choices,
      int choiceRows,
      int fewestChoiceRows,
      boolean areChoicesAside,
      int history,
      int pictures) {

    /** Without choices. */
    Wants(int fields, int leastFields, int notices, int history, int pictures) {
      this(fields, leastFields, notices, 0, 0, 0, false, history, pictures);
    }

    /** A record alone. */
    static Wants of(int fields) {
      return new Wants(fields, Math.min(fields, 5), 1, 0, 0);
    }

    private int choiceBlock() {
      return choices == 0 ? 0 : choiceRows + 1;
    }

    private int leastChoiceBlock() {
      return choices == 0 || areChoicesAside ? 0 : fewestChoiceRows + 1;
    }

    /** What they get; where they must be cut, no more rows than their columns need. */
    private int choiceBlock(int free) {
      int block = block(choiceBlock(), free);
      if (block == 0 || block == choiceBlock()) {
        return block;
      }
      int columns = (choices + block - 2) / (block - 1);
      return (choices + columns - 1) / columns + 1;
    }

    /** The rows of the record that are kept for it before choices get any. */
    private int keptRows(int room, int columns) {
      int free = room - notices - leastBlocks();
      int least = leastRows(columns);
      return least <= free || free < 0 ? least : Math.min(least, free > 0 ? 1 : 0);
    }

    private int choiceRows(int room, int columns) {
      int block = choiceBlock(Math.max(room - notices - keptRows(room, columns), 0));
      return areChoicesAside && block <= fewestChoiceRows ? 0 : block;
    }

    private int leastBlocks() {
      return leastChoiceBlock() + leastHistoryBlock();
    }

    private int leastHistoryBlock() {
      return history == 0 ? 0 : LEAST_BLOCK;
    }

    private int historyBlock(int height) {
      int most = height >= TALL ? MOST_HISTORY_WHEN_TALL : MOST_HISTORY;
      return history == 0 ? 0 : Math.min(history, most) + 1;
    }

    private int rows(int columns) {
      return (fields + columns - 1) / columns;
    }

    private int leastRows(int columns) {
      return (Math.min(leastFields, fields) + columns - 1) / columns;
    }
  }

  /** Whether a window of so many rows has room for more than what must be seen. */
  static boolean isTall(int height) {
    return height >= TALL;
  }

  /** Whether the window is tall. */
  boolean isTall() {
    return isTall(counts + 1);
  }

  static boolean isTooSmall(int width, int height) {
    return width < LEAST_WIDTH || height < LEAST_HEIGHT;
  }

  static Layout of(int width, int height, Wants wants) {
    int scale = height >= 34 && width >= 100 ? 2 : 1;
    while (scale > 0 && !fits(width, height, scale, wants)) {
      scale--;
    }
    return of(width, height, scale, wants);
  }

  private static boolean fits(int width, int height, int scale, Wants wants) {
    // beside a list of choices the field that is asked need not be seen twice
    int least = wants.choices() > 0 || wants.leastFields() == 0 ? 0 : 1;
    return wants.notices() + least + wants.leastBlocks() <= room(height, scale);
  }

  /** The rows for notices, record, choices, history and last saved records. */
  private static int room(int height, int scale) {
    return hints(height) - BIG - BigGlyphs.ROWS * scale - titleRows(height);
  }

  private static int hints(int height) {
    return height - 1 - hintRows(height);
  }

  private static int hintRows(int height) {
    return height >= TALL ? 2 : 1;
  }

  private static int titleRows(int height) {
    return height >= 27 ? 1 : 0;
  }

  /** One column, which says most of a field, where all fields fit in it. */
  private static int columns(int width, int height, int scale, Wants wants) {
    int pictures = height >= TALL ? USUAL_PICTURES : 0;
    int below = Math.max(pictures, wants.choiceBlock() + wants.leastHistoryBlock());
    int needed = LEAST_NOTICES + wants.fields() + below;
    return needed <= room(height, scale) || width < TWO_COLUMNS_WIDTH ? 1 : 2;
  }

  private static Layout of(int width, int height, int scale, Wants wants) {
    int columns = columns(width, height, scale, wants);
    int room = room(height, scale);
    int kept = wants.keptRows(room, columns);
    int least = wants.notices() + kept;
    int choiceRows = wants.choiceRows(room, columns);
    int historyRows = block(wants.historyBlock(height), room - least - choiceRows);
    int free = room - choiceRows - historyRows;
    boolean isTall = isTall(height);
    int pictureRows = isTall ? 0 : Math.min(wants.pictures(), Math.max(free - least, 0));
    free -= pictureRows;
    // a picture takes what a short message leaves free, before it takes the rows of fields
    boolean isScarce = scale == 0 || pictureRows > 0 || kept < wants.leastRows(columns);
    int leastNotices = isScarce ? wants.notices() : Math.max(LEAST_NOTICES, wants.notices());
    int mostRecord = Math.max(free - leastNotices, 0);
    int recordRows = Math.min(wants.rows(columns), Math.max(mostRecord, kept));
    recordRows = Math.min(recordRows, Math.max(free - 1, 0));
    // a few lines of a record that nobody looks at would only distract
    boolean isWorthless = wants.leastFields() == 0 && 2 * recordRows * columns < wants.fields();
    recordRows = isWorthless ? 0 : recordRows;
    int titleRows = recordRows > 0 ? titleRows(height) : 0;
    free = free - recordRows + titleRows(height) - titleRows;
    int besides = isTall ? block(wants.pictures(), free - leastNotices) : 0;
    free -= besides;
    int recentRows = isTall ? Math.min(free - USUAL_NOTICES, MOST_RECENT) : 0;
    recentRows = recentRows < LEAST_RECENT ? 0 : recentRows;
    int noticeRows = free - recentRows;

    int notices = BIG + BigGlyphs.ROWS * scale;
    int record = notices + noticeRows + pictureRows + titleRows;
    int choices = record + recordRows;
    int history = choices + choiceRows;
    int besidesRow = history + historyRows;
    int pictures = isTall ? besidesRow : notices + noticeRows;
    return new Layout(
        ASKED,
        BIG,
        scale,
        notices,
        noticeRows,
        pictures,
        pictureRows + besides,
        record,
        recordRows,
        columns,
        titleRows > 0,
        choices,
        choiceRows,
        history,
        historyRows,
        besidesRow + besides,
        recentRows,
        hints(height),
        hintRows(height),
        height - 1);
  }

  /** The rows of a block with a title, or none where not even one line would fit. */
  private static int block(int wanted, int free) {
    int rows = Math.min(wanted, free);
    return rows < LEAST_BLOCK ? 0 : rows;
  }
}
