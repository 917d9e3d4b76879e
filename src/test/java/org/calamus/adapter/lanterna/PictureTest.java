package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.fail;

import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.calamus.core.dialogue.View;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PictureTest {

  /** Set to a folder, the pictures are written there to be looked at and kept. */
  private static final String WRITE_TO = System.getProperty("calamus.screens", "");

  private static final Map<String, View> PICTURES = pictures();

  private static Map<String, View> pictures() {
    Map<String, View> pictures = new TreeMap<>();
    pictures.put("asking", Views.asking());
    pictures.put("keying", Views.keying());
    pictures.put("band-taken", Views.bandTaken());
    pictures.put("value-taken", Views.valueTaken());
    pictures.put("question", Views.question());
    pictures.put("refused", Views.refused());
    pictures.put("parts-down-and-question", Views.partsDown());
    pictures.put("parts-down", Views.partsDownAlone());
    pictures.put("cautions", Views.cautions());
    pictures.put("standings", Views.standings());
    pictures.put("long-record", Views.longRecord());
    pictures.put("long-record-begun", Views.longRecordBegun());
    pictures.put("long-record-in-question", Views.longRecordInQuestion());
    pictures.put("menu", Views.menu());
    pictures.put("codes", Views.codes());
    pictures.put("many-codes", Views.manyCodes());
    pictures.put("recapture", Views.recapture());
    pictures.put("recapture-at-wing", Views.recaptureAtWing());
    pictures.put("recapture-weighed", Views.recaptureWeighed());
    pictures.put("wing-placed", Views.wingPlaced());
    pictures.put("question-placed", Views.questionPlaced());
    pictures.put("held-long", Views.held(View.Hold.LONG, Duration.ofSeconds(372)));
    pictures.put("page-session", PageViews.session());
    pictures.put("page-session-down", PageViews.sessionDown());
    pictures.put("page-records", PageViews.records());
    pictures.put("page-records-chosen", PageViews.recordsChosen());
    pictures.put("page-record", PageViews.record());
    pictures.put("page-record-corrected", PageViews.recordCorrected());
    pictures.put("page-record-corrected-leafed", PageViews.recordCorrectedLeafed());
    pictures.put("page-strings", PageViews.strings());
    pictures.put("page-species", PageViews.species());
    pictures.put("page-commands", PageViews.commands());
    pictures.put("page-commands-leafed", PageViews.commandsLeafed());
    pictures.put("page-held-long", PageViews.heldLong());
    pictures.put("held-over", Views.held(View.Hold.OVER, Duration.ofSeconds(700)));
    return pictures;
  }

  static Stream<Arguments> drawPutsEverythingInItsPlace() {
    return PICTURES.keySet().stream()
        .flatMap(name -> Stream.of(Arguments.of(name, 80, 24), Arguments.of(name, 120, 40)));
  }

  @ParameterizedTest(name = "{0} at {1}x{2}")
  @MethodSource
  void drawPutsEverythingInItsPlace(String name, int columns, int rows) throws IOException {
    String shown = Screens.text(PICTURES.get(name), columns, rows);
    String file = name + "-" + columns + "x" + rows + ".txt";
    if (!WRITE_TO.isEmpty()) {
      Files.writeString(Path.of(WRITE_TO, file), shown, StandardCharsets.UTF_8);
      fail("written, not compared: " + file);
    }
    assertThat(shown.lines().toList()).as(file).isEqualTo(kept(file).lines().toList());
  }

  private static String kept(String file) throws IOException {
    try (InputStream in = PictureTest.class.getResourceAsStream("/screens/" + file)) {
      assertThat(in).as("the file screens/" + file).isNotNull();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void drawSaysSoInOneLineWhenTheWindowIsTooSmall() {
    assertThat(Screens.text(Views.question(), 59, 24).strip()).isEqualTo(Picture.TOO_SMALL);
    assertThat(Screens.text(Views.question(), 80, 19).strip()).isEqualTo(Picture.TOO_SMALL);
    assertThat(Screens.text(Views.question(), 60, 20)).doesNotContain(Picture.TOO_SMALL);
  }

  @Test
  void drawShowsWhatMattersInTheLeastWindow() {
    assertThat(Screens.text(Views.question(), 60, 20))
        .contains("CHECK", "Keep 29 mm?", "in question", "affirm [Enter]", "in hand 1:34");
  }

  @ParameterizedTest
  @CsvSource({"KEYPAD", "LISTENING", "HEARING", "SPEAKING", "CHECK"})
  void drawNamesTheModeInTheSamePlace(View.Mode mode) {
    String top = Screens.text(Views.in(mode), 80, 24).lines().findFirst().orElseThrow();
    assertThat(top.substring(57, 69).strip()).isEqualTo(mode.name());
    assertThat(top.substring(69)).isEqualTo("████░░░░░░");
  }

  @Test
  void drawTellsModesApartWithoutColour() {
    Set<String> seen =
        Arrays.stream(View.Mode.values())
            .map(mode -> Screens.text(Views.in(mode), 80, 24))
            .collect(Collectors.toSet());
    assertThat(seen).hasSize(View.Mode.values().length);
  }

  @Test
  void drawTellsStandingsApartByMarkAndByWord() {
    List<String> lines = Screens.text(Views.standings(), 80, 24).lines().toList();
    List<String> record = lines.subList(16, 22);
    assertThat(new HashSet<>(record.stream().map(line -> line.substring(1, 2)).toList()))
        .as("marks")
        .hasSize(View.Standing.values().length);
    assertThat(record.stream().map(line -> line.substring(67)).toList())
        .containsExactly("taken", "in question", "missing", "asked", "empty", "confirmed");
  }

  @Test
  void drawKeepsTheRecordInPlaceWhateverHappensAbove() {
    String taken = " = Band                 2841-55601";
    for (View view :
        List.of(Views.asking(), Views.question(), Views.refused(), Views.partsDown())) {
      assertThat(Screens.text(view, 80, 24).lines().toList().get(16)).startsWith(taken);
    }
  }

  @ParameterizedTest
  @CsvSource({"80, 24", "120, 40"})
  void drawShowsTheWholeMenuUncut(int columns, int rows) {
    String shown = Screens.text(Views.menu(), columns, rows);
    for (View.Choice choice : Views.menu().choices()) {
      assertThat(shown).contains(choice.keys() + " " + choice.meaning());
    }
    assertThat(shown).contains(Views.menu().message(), "Age taken", Views.menu().asked());
  }

  @ParameterizedTest
  @CsvSource({"60, 20", "80, 24", "120, 40"})
  void drawShowsEveryOneOfFortyCodesAndWhatIsAskedAndKeyed(int columns, int rows) {
    String shown = Screens.text(Views.manyCodes(), columns, rows);
    for (View.Choice choice : Views.manyCodes().choices()) {
      assertThat(shown).contains(choice.keys() + " ");
    }
    assertThat(shown).contains("> Status", Views.manyCodes().message(), "> Wing chord");
  }

  @Test
  void drawLeavesOutCodesWithoutANumber() {
    assertThat(Screens.text(Views.codes(), 80, 24))
        .contains("8 not visible")
        .doesNotContain("not asked for by number");
  }

  @Test
  void drawGivesHistoryTheRoomOfTheLastSavedRecordsFirst() {
    assertThat(Screens.text(Views.longRecord(), 120, 40)).contains("Last saved");
    assertThat(Screens.text(Views.recaptureAtWing(), 120, 40))
        .contains("Earlier captures", "2026-07-27 QX  N")
        .doesNotContain("Last saved");
  }

  @Test
  void drawTellsTheTimeInTheHandByWordAndByInk() {
    assertThat(timer(View.Hold.WITHIN, Ink.Palette.SIXTEEN)).isEqualTo(Ink.PLAIN);
    assertThat(timer(View.Hold.LONG, Ink.Palette.SIXTEEN)).isEqualTo(Ink.FILLED);
    assertThat(timer(View.Hold.OVER, Ink.Palette.SIXTEEN)).isEqualTo(Ink.ALERT_FILLED);
    assertThat(timer(View.Hold.WITHIN, Ink.Palette.NONE)).isEqualTo(Ink.PLAIN);
    assertThat(timer(View.Hold.LONG, Ink.Palette.NONE)).isEqualTo(Ink.FILLED);
    for (int columns : new int[] {60, 80, 120}) {
      assertThat(Screens.text(held(View.Hold.LONG), columns, 24)).contains("in hand 1:01:40 LONG");
      assertThat(Screens.text(held(View.Hold.OVER), columns, 24))
          .contains("in hand 1:01:40 OVER LIMIT: RELEASE");
    }
  }

  private static View held(View.Hold hold) {
    return Views.held(hold, Duration.ofSeconds(3700));
  }

  /** The ink of the timer. */
  private static Ink timer(View.Hold hold, Ink.Palette palette) {
    TextCharacter cell = Screens.drawn(held(hold), 80, 24, palette).getCharacter(3, 23);
    return Arrays.stream(Ink.values())
        .filter(ink -> ink.marks(palette).equals(cell.getModifiers()))
        .filter(ink -> ink.ground(palette).equals(cell.getBackgroundColor()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void drawUsesWhiteOnRedAndTheDefaultsOnly() {
    Set<List<TextColor>> pairs = new HashSet<>();
    for (View view : PICTURES.values()) {
      Screens.cells(Screens.drawn(view, 80, 24, Ink.Palette.SIXTEEN))
          .forEach(
              cell -> pairs.add(List.of(cell.getForegroundColor(), cell.getBackgroundColor())));
    }
    assertThat(pairs)
        .containsExactlyInAnyOrder(
            List.of(TextColor.ANSI.DEFAULT, TextColor.ANSI.DEFAULT),
            List.of(TextColor.ANSI.WHITE_BRIGHT, TextColor.ANSI.RED));
  }

  @Test
  void drawUsesNoColourWhenNoneIsWanted() {
    for (View view : PICTURES.values()) {
      assertThat(Screens.cells(Screens.drawn(view, 80, 24, Ink.Palette.NONE)))
          .allMatch(cell -> cell.getForegroundColor().equals(TextColor.ANSI.DEFAULT))
          .allMatch(cell -> cell.getBackgroundColor().equals(TextColor.ANSI.DEFAULT));
    }
  }

  @Test
  void drawFallsBackToPlainTextWhenLargeGlyphsDoNotFit() {
    assertThat(Screens.text(Views.big("2841-55601 2841"), 80, 24)).contains("2841-55601 2841");
    assertThat(Screens.text(Views.big("½"), 80, 24)).contains("½");
  }

  @Test
  void drawGivesWideCharactersTheirTwoCells() {
    View wide = Views.big("鳥 92");
    assertThat(Screens.drawn(wide, 80, 24, Ink.Palette.NONE).getCharacter(5, 6))
        .extracting(TextCharacter::getCharacterString)
        .isEqualTo("9");
  }

  @Test
  void drawNeverFailsAtAnySize() {
    for (int columns = 1; columns <= 180; columns += 13) {
      for (int rows = 1; rows <= 60; rows += rows < 18 ? 6 : 2) {
        int width = columns;
        int height = rows;
        for (View view :
            List.of(
                Views.partsDown(),
                Views.cautions(),
                Views.menu(),
                Views.manyCodes(),
                Views.recapture(),
                Views.longRecordInQuestion())) {
          assertThatCode(() -> Screens.text(view, width, height))
              .as(width + "x" + height)
              .doesNotThrowAnyException();
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"-96, 0", "-60, 0", "-57, 1", "-30, 5", "-3, 10", "0, 10", "6, 10"})
  void drawFillsTheBarByTheLevel(int decibels, int filled) {
    String top = Screens.text(Views.at(decibels), 80, 24).lines().findFirst().orElseThrow();
    assertThat(top).endsWith(" " + "█".repeat(filled) + "░".repeat(10 - filled));
  }
}
