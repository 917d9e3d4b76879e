package org.calamus.adapter.lanterna;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.Pictures;
import org.calamus.core.dialogue.View;
import org.calamus.core.form.Range;
import org.calamus.core.readback.Course;
import org.calamus.core.readback.Strip;
import org.calamus.core.record.FieldId;

/**
 * The pictures of the bird's measures, right above the record. In a low window a line for the
 * measure in work, and one for the mass over time; in a tall one a line for each measure and each
 * earlier mass, all on one axis.
 */
final class PicturePart {

  private static final int LEFT = 1;
  private static final int WIDE = 100;
  private static final int NAME_CELLS = 7;
  private static final int WIDE_NAME_CELLS = 11;
  private static final int END_CELLS = 5;
  private static final int DRAWN_CELLS = 21;
  private static final int WIDE_DRAWN_CELLS = 50;
  private static final int MOST_EARLIER = 4;

  private static final char EARLIER = 'o';

  /**
   * A line of it.
   *
   * @param name what it is about
   * @param least the number at the left end; may be empty
   * @param drawn the drawing, in the core's characters
   * @param most the number at the right end; may be empty
   * @param words the same in words
   */
  private record Row(String name, String least, String drawn, String most, String words) {}

  private final Pictures pictures;
  private final int drawnCells;
  private final int nameCells;

  PicturePart(Pictures pictures, int width) {
    this.pictures = pictures;
    this.drawnCells = width >= WIDE ? WIDE_DRAWN_CELLS : DRAWN_CELLS;
    this.nameCells = width >= WIDE ? WIDE_NAME_CELLS : NAME_CELLS;
  }

  /** The rows that they would like to have, with a title in a tall window. */
  int rows(boolean isTall) {
    int lines = lines(isTall).size();
    return isTall && lines > 0 ? lines + 1 : lines;
  }

  /** Draws as many as there is room for, what is in work first. */
  static void draw(Sheet sheet, Layout layout, View view) {
    int rows = layout.pictureRows();
    if (rows == 0) {
      return;
    }
    PicturePart part = new PicturePart(view.pictures(), sheet.width());
    int row = layout.pictures();
    if (layout.isTall() && rows > 1) {
      sheet.rule(row++, "Where this bird falls: [-] published, m f b u own birds");
      rows--;
    }
    List<Row> lines = part.lines(layout.isTall() && rows > 1);
    for (int i = 0; i < Math.min(rows, lines.size()); i++) {
      part.draw(sheet, row + i, lines.get(i));
    }
  }

  private List<Row> lines(boolean isTall) {
    return isTall ? all() : inWork();
  }

  private List<Row> inWork() {
    List<Row> rows = new ArrayList<>();
    pictures.current().map(this::strip).ifPresent(rows::add);
    pictures.masses().filter(any -> pictures.isWeighing()).map(this::masses).ifPresent(rows::add);
    return rows;
  }

  private List<Row> all() {
    List<Row> rows = new ArrayList<>();
    pictures.current().map(this::strip).ifPresent(rows::add);
    pictures.masses().map(this::masses).ifPresent(rows::add);
    pictures.strips().stream()
        .filter(s -> !pictures.inWork().equals(Optional.of(s.field())))
        .map(this::strip)
        .forEach(rows::add);
    pictures.masses().ifPresent(course -> rows.addAll(earlier(course)));
    return rows;
  }

  private Row strip(Strip strip) {
    Optional<Range> ends = strip.published();
    return new Row(
        strip.name(),
        ends.map(r -> r.least().toPlainString()).orElse(""),
        strip.drawn(drawnCells),
        ends.map(r -> r.most().toPlainString()).orElse(""),
        strip.words());
  }

  private Row masses(Course course) {
    return new Row(
        "masses",
        course.range().least().toPlainString(),
        course.drawn(drawnCells),
        course.range().most().toPlainString(),
        course.words());
  }

  /** The last of the earlier masses, on the axis of the mass where that is drawn. */
  private List<Row> earlier(Course course) {
    Range axis =
        pictures.strips().stream()
            .filter(s -> s.field() == FieldId.MASS)
            .findFirst()
            .map(Strip::axis)
            .orElse(course.axis());
    List<Course.Point> all = course.earlier();
    List<Row> rows = new ArrayList<>();
    for (Course.Point point : all.subList(Math.max(0, all.size() - MOST_EARLIER), all.size())) {
      String amount = point.amount().toPlainString() + " " + course.unit();
      String drawn = Strip.point(point.amount(), axis, EARLIER, drawnCells);
      rows.add(new Row(point.day().toString(), "", drawn, "", "mass " + amount));
    }
    return rows;
  }

  private void draw(Sheet sheet, int row, Row line) {
    int ends = LEFT + nameCells + END_CELLS;
    sheet.put(LEFT, row, line.name(), nameCells - 1, Ink.STRONG);
    sheet.put(ends - Prose.cells(line.least()), row, line.least(), END_CELLS, Ink.PLAIN);
    int column = ends + 1;
    for (char mark : line.drawn().toCharArray()) {
      column = sheet.put(column, row, String.valueOf(drawn(sheet.strokes(), mark)), ink(mark));
    }
    sheet.put(column + 1, row, line.most(), END_CELLS, Ink.PLAIN);
    sheet.put(column + 1 + END_CELLS + 1, row, line.words(), Ink.PLAIN);
  }

  private static char drawn(Strokes strokes, char mark) {
    return switch (mark) {
      case Strip.BIRD -> strokes.block();
      case Strip.RANGE -> strokes.across();
      case Course.MIDDLE -> strokes.half();
      default -> mark;
    };
  }

  private static Ink ink(char mark) {
    return switch (mark) {
      case Strip.BIRD, Strip.BELOW, Strip.ABOVE -> Ink.STRONG;
      default -> Ink.PLAIN;
    };
  }
}
