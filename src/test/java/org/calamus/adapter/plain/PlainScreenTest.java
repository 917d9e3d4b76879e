package org.calamus.adapter.plain;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.Page;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Pictures;
import org.calamus.core.dialogue.View;
import org.calamus.core.form.Range;
import org.calamus.core.readback.Course;
import org.calamus.core.readback.Strip;
import org.calamus.core.record.FieldId;
import org.calamus.port.Screen;
import org.junit.jupiter.api.Test;

class PlainScreenTest {

  private static final Instant NOW = Instant.parse("2026-11-25T13:41:07Z");
  private static final ZoneId ZONE = ZoneId.of("-05:00");

  private final ByteArrayOutputStream written = new ByteArrayOutputStream();
  private final PrintStream out = new PrintStream(written, true, StandardCharsets.UTF_8);
  private final BlockingQueue<Event> events = new LinkedBlockingQueue<>();

  private List<String> lines(View... views) {
    try (Screen screen = new PlainScreen(() -> NOW, ZONE, out)) {
      screen.start(events::add);
      for (View view : views) {
        screen.show(view);
      }
    }
    return written.toString(StandardCharsets.UTF_8).lines().toList();
  }

  @Test
  void showTellsARecordLineByLine() {
    Draft draft = new Draft();
    List<View> views = new ArrayList<>(List.of(draft.view()));
    draft.wing = line(FieldId.WING, "29", "said", View.Standing.IN_QUESTION);
    draft.question = Optional.of("Wing 29 mm is below 78. Did you mean 92?");
    draft.mode = View.Mode.CHECK;
    views.add(draft.view());
    draft.wing = line(FieldId.WING, "92", "said", View.Standing.TAKEN);
    draft.question = Optional.empty();
    draft.mode = View.Mode.LISTENING;
    draft.asked = "mass, g";
    views.add(draft.view());
    draft.mass = line(FieldId.MASS, "22.3", "measured", View.Standing.CONFIRMED);
    views.add(draft.view());
    draft.mass = line(FieldId.MASS, "", "", View.Standing.ASKED);
    views.add(draft.view());
    draft.wing = line(FieldId.WING, "", "", View.Standing.EMPTY);
    draft.savedCount = 1;
    draft.recent = List.of("2841-55601 WBNU wing 92");
    draft.asked = "band";
    views.add(draft.view());

    assertThat(lines(views.toArray(View[]::new)))
        .containsExactly(
            "08:41:07 scale ok: bench balance",
            "08:41:07 caution: the bird comes first",
            "08:41:07 asked: wing, mm",
            "08:41:07 CHECK Wing 29 mm is below 78. Did you mean 92?",
            "08:41:07 taken: wing 92 (said)",
            "08:41:07 asked: mass, g",
            "08:41:07 confirmed: mass 22.3 (measured)",
            "08:41:07 emptied: mass",
            "08:41:07 saved 1: 2841-55601 WBNU wing 92",
            "08:41:07 asked: band");
  }

  @Test
  void showTellsAPartThatGoesDownAndComesBack() {
    Draft draft = new Draft();
    View first = draft.view();
    draft.scale = new View.Health(Part.SCALE, false, "The balance is gone: look at its cable.");
    assertThat(lines(first, draft.view(), draft.view(), first))
        .endsWith(
            "08:41:07 scale DOWN: The balance is gone: look at its cable.",
            "08:41:07 scale ok: bench balance")
        .hasSize(5);
  }

  @Test
  void showTellsAMessageOnceAndInOneLine() {
    Draft draft = new Draft();
    View first = draft.view();
    draft.message = "Not taken:\nwing 920";
    assertThat(lines(first, draft.view(), draft.view()))
        .endsWith("08:41:07 Not taken: wing 920")
        .hasSize(4);
  }

  @Test
  void showTellsOnceWhereAMeasureFallsAndTheEarlierMassesInTheWordsOfTheDrawing() {
    Draft draft = new Draft();
    View first = draft.view();
    Range published = new Range(new BigDecimal("77"), new BigDecimal("100"));
    Strip.Own males = new Strip.Own("M", 14, 11, published);
    BigDecimal wing = new BigDecimal("96");
    Strip strip =
        new Strip(FieldId.WING, "wing", wing, Optional.of(published), List.of(males), published);
    draft.pictures =
        new Pictures(List.of(strip), Optional.of(FieldId.WING), Optional.empty(), false);
    View placed = draft.view();
    Course.Point before = new Course.Point(LocalDate.of(2026, 6, 1), new BigDecimal("22.4"));
    Course course =
        new Course(List.of(before), Optional.of(new BigDecimal("21.9")), "g", published);
    draft.pictures =
        new Pictures(List.of(strip), Optional.of(FieldId.MASS), Optional.of(course), true);
    assertThat(lines(first, placed, placed, draft.view(), draft.view()))
        .endsWith(
            "08:41:07 placed: wing 96, published 77 to 100: inside, above 11 of 14 M",
            "08:41:07 masses: last 22.4 g on 2026-06-01, now -0.5")
        .hasSize(5);
  }

  @Test
  void showTellsTheHistoryOnce() {
    Draft draft = new Draft();
    View first = draft.view();
    draft.history = List.of("2026-09-12 QX  R  WBNU", "2026-07-27 QX  N  WBNU");
    assertThat(lines(first, draft.view(), draft.view(), first))
        .endsWith(
            "08:41:07 history: 2026-09-12 QX  R  WBNU", "08:41:07 history: 2026-07-27 QX  N  WBNU")
        .hasSize(5);
  }

  @Test
  void showTellsTheMenuWhenItOpensAndNoCodes() {
    Draft draft = new Draft();
    draft.choices = List.of(new View.Choice("0", "unknown"), new View.Choice("4", "male"));
    View codes = draft.view();
    draft.choices = List.of(new View.Choice("01", "Band"), new View.Choice("+", "save record"));
    View menu = draft.view();
    draft.big = "0";
    assertThat(lines(codes, menu, draft.view(), codes, menu))
        .endsWith("08:41:07 menu: 01 Band, + save record", "08:41:07 menu: 01 Band, + save record")
        .hasSize(5);
  }

  @Test
  void showTellsAPageWhenItOpensAndWhatIsChosenAndTheWayBack() {
    Draft draft = new Draft();
    List<View> views = new ArrayList<>(List.of(draft.view()));
    List<Page.Row> rows =
        List.of(
            new Page.Row(Page.Look.TITLE, "", "", "The others: 1", ""),
            new Page.Row(Page.Look.TEXT, "1", "*", "07:48  2841-55602", "kept: wing"),
            new Page.Row(Page.Look.TEXT, "", "", "", ""));
    draft.page = Optional.of(new Page("Records", rows, 0, Optional.empty()));
    views.add(draft.view());
    draft.page = Optional.of(new Page("Records", rows, 0, Optional.of("1")));
    views.add(draft.view());
    views.add(draft.view());
    draft.page = Optional.empty();
    views.add(draft.view());
    assertThat(lines(views.toArray(View[]::new)))
        .filteredOn(line -> line.matches(".*(page|chosen|  ).*"))
        .containsExactly(
            "08:41:07 page: Records",
            "08:41:07   The others: 1",
            "08:41:07   1 * 07:48  2841-55602 kept: wing",
            "08:41:07 chosen: row 1",
            "08:41:07 page: capture");
  }

  @Test
  void showTellsThatTheBirdIsHeldTooLongOnceForEachStep() {
    Draft draft = new Draft();
    List<View> views = new ArrayList<>(List.of(draft.view()));
    draft.hold = View.Hold.LONG;
    draft.inHand = Optional.of(Duration.ofSeconds(372));
    views.add(draft.view());
    draft.inHand = Optional.of(Duration.ofSeconds(373));
    views.add(draft.view());
    draft.hold = View.Hold.OVER;
    draft.inHand = Optional.of(Duration.ofSeconds(700));
    views.add(draft.view());
    views.add(new Draft().view());
    assertThat(lines(views.toArray(View[]::new)))
        .endsWith(
            "08:41:07 held LONG: in hand 6:12", "08:41:07 held OVER LIMIT: RELEASE: in hand 11:40")
        .hasSize(5);
  }

  @Test
  void showPrintsNothingWhenOnlyLevelTimerModeOrLargeTextChange() {
    Draft draft = new Draft();
    View first = draft.view();
    draft.decibels = -3;
    draft.inHand = Optional.of(Duration.ofSeconds(99));
    draft.mode = View.Mode.HEARING;
    draft.big = "9";
    assertThat(lines(first, draft.view())).hasSize(3);
  }

  @Test
  void showAsksForTheEndOnceWhenTheOutputBreaks() throws InterruptedException {
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException("broken pipe");
          }
        };
    Screen screen =
        new PlainScreen(() -> NOW, ZONE, new PrintStream(broken, true, StandardCharsets.UTF_8));
    screen.start(events::add);
    screen.show(new Draft().view());
    screen.show(new Draft().view());
    assertThat(events).containsExactly(new Event.Stopping(NOW));
  }

  @Test
  void keysComeFromTheStreamAndItsEndStopsTheSessionWhenAskedTo() throws InterruptedException {
    Screen screen = withKeys("9.\r\n \u007f?w\u0003", PlainScreen.AtEnd.STOP);
    assertThat(next(7))
        .containsExactly(
            struck(Key.of('9')),
            struck(Key.of('.')),
            struck(Key.of(Key.Name.ENTER)),
            struck(Key.of(Key.Name.TALK)),
            struck(Key.of(Key.Name.BACKSPACE)),
            struck(Key.of('w')),
            struck(Key.of(Key.Name.INTERRUPT)));
    assertThat(next(1)).containsExactly(new Event.Stopping(NOW));
    screen.close();
  }

  @Test
  void theEndOfTheKeysIsNoStopWhenTheSessionShallGoOn() throws InterruptedException {
    Screen screen = withKeys("92\n", PlainScreen.AtEnd.GO_ON);
    assertThat(next(3)).hasSize(3).noneMatch(event -> event instanceof Event.Stopping);
    assertThat(events.poll(200, TimeUnit.MILLISECONDS)).isNull();
    screen.close();
  }

  private Screen withKeys(String keys, PlainScreen.AtEnd atEnd) {
    InputStream in = new ByteArrayInputStream(keys.getBytes(StandardCharsets.UTF_8));
    Screen screen = new PlainScreen(() -> NOW, ZONE, out, in, atEnd);
    screen.start(events::add);
    return screen;
  }

  private List<Event> next(int count) throws InterruptedException {
    List<Event> next = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Event event = events.poll(20, TimeUnit.SECONDS);
      assertThat(event).as("event " + i).isNotNull();
      next.add(event);
    }
    return next;
  }

  private static Event struck(Key key) {
    return new Event.KeyStruck(NOW, key);
  }

  private static View.Line line(FieldId field, String value, String way, View.Standing standing) {
    String label = field == FieldId.WING ? "wing" : "mass";
    return new View.Line(field, label, value, way, standing);
  }

  /** A view in the making. */
  private static final class Draft {
    private View.Mode mode = View.Mode.LISTENING;
    private String asked = "wing, mm";
    private String big = "";
    private View.Line wing = line(FieldId.WING, "", "", View.Standing.ASKED);
    private View.Line mass = line(FieldId.MASS, "", "", View.Standing.EMPTY);
    private Optional<String> question = Optional.empty();
    private String message = "";
    private View.Health scale = new View.Health(Part.SCALE, true, "bench balance");
    private int decibels = -40;
    private Optional<Duration> inHand = Optional.empty();
    private int savedCount;
    private List<String> recent = List.of();
    private List<View.Choice> choices = List.of();
    private List<String> history = List.of();
    private View.Hold hold = View.Hold.WITHIN;
    private Optional<Page> page = Optional.empty();
    private Pictures pictures = Pictures.none();

    private View view() {
      return new View(
          mode,
          "Fenwick Marsh",
          asked,
          big,
          "",
          List.of(wing, mass),
          question,
          message,
          List.of(scale),
          decibels,
          Optional.empty(),
          List.of(),
          "2841-55602",
          inHand,
          savedCount,
          recent,
          List.of("the bird comes first"),
          choices,
          history,
          hold,
          pictures,
          "",
          page);
    }
  }
}
