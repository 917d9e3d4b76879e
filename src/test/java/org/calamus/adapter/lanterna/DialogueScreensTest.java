package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.calamus.core.dialogue.View;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What the real dialogue shows in every kind of state, as whole pictures. */
class DialogueScreensTest {

  /** Set to a folder, the pictures are written there to be looked at and kept. */
  private static final String WRITE_TO = System.getProperty("calamus.screens", "");

  static Stream<Arguments> everyStateIsShownAsKept() {
    return Stream.of(Situation.values())
        .flatMap(
            situation ->
                Stream.of(Arguments.of(situation, 80, 24), Arguments.of(situation, 120, 40)));
  }

  @ParameterizedTest(name = "{0} at {1}x{2}")
  @MethodSource
  void everyStateIsShownAsKept(Situation situation, int columns, int rows) throws IOException {
    String shown = Screens.text(situation.talk().view(), columns, rows);
    String name = situation.name().toLowerCase(Locale.ROOT).replace('_', '-');
    String file = "state-" + name + "-" + columns + "x" + rows + ".txt";
    if (!WRITE_TO.isEmpty()) {
      Files.writeString(Path.of(WRITE_TO, file), shown, StandardCharsets.UTF_8);
      fail("written, not compared: " + file);
    }
    assertThat(shown.lines().toList()).as(file).isEqualTo(kept(file).lines().toList());
  }

  private static String kept(String file) throws IOException {
    try (InputStream in = DialogueScreensTest.class.getResourceAsStream("/screens/" + file)) {
      assertThat(in).as("the file screens/" + file).isNotNull();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void ofAValueThatIsCorrectedNothingIsCut() {
    Talk talk = Situation.CORRECTING.talk().keys("++3\n").keys("+81\n+1794\n");
    assertThat(Screens.text(talk.view(), 80, 24)).contains("94 mm, was 93 mm");
    talk.say("band six zero two").say("out of order");
    assertThat(talk.view().lines())
        .extracting(View.Line::value)
        .contains("2841-55602, was 2841-55601");
    assertThat(Screens.text(talk.view(), 80, 24))
        .containsPattern("Band number +2841-55602 ")
        .doesNotContain("2841-55602, was");
    assertThat(Screens.text(talk.view(), 120, 40)).contains("2841-55602, was 2841-55601");
  }

  @Test
  void theStatesHaveEveryModeStandingHoldAndQuestion() throws ClassNotFoundException {
    Set<View.Mode> modes = EnumSet.noneOf(View.Mode.class);
    Set<View.Standing> standings = EnumSet.noneOf(View.Standing.class);
    Set<View.Hold> holds = EnumSet.noneOf(View.Hold.class);
    for (Situation situation : Situation.values()) {
      View view = situation.talk().view();
      modes.add(view.mode());
      holds.add(view.hold());
      view.lines().forEach(line -> standings.add(line.standing()));
    }
    assertThat(modes).containsExactlyInAnyOrder(View.Mode.values());
    assertThat(standings).containsExactlyInAnyOrder(View.Standing.values());
    assertThat(holds).containsExactlyInAnyOrder(View.Hold.values());

    Class<?> family = Class.forName("org.calamus.core.dialogue.Question");
    Set<String> all =
        Arrays.stream(family.getPermittedSubclasses())
            .map(Class::getSimpleName)
            .collect(Collectors.toSet());
    assertThat(asked()).isEqualTo(all);
  }

  private static Set<String> asked() {
    return Stream.of(Situation.values())
        .map(Situation::talk)
        .map(DialogueScreensTest::question)
        .flatMap(Optional::stream)
        .collect(Collectors.toSet());
  }

  private static Optional<String> question(Talk talk) {
    Optional<?> open = talk.state().question();
    return open.map(question -> question.getClass().getSimpleName());
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void nothingThatMustBeSeenIsCutAtTheUsualSize(Situation situation) {
    View view = situation.talk().view();
    String shown = Screens.text(view, 80, 24);
    assertThat(shown).contains(view.mode().word(), view.asked());
    view.question().ifPresent(question -> assertThat(run(shown)).contains(run(question)));
    view.inHand().ifPresent(any -> assertThat(shown).contains("in hand "));
    for (View.Health part : view.health()) {
      assertThat(shown)
          .contains(part.part().word() + (part.isUp() ? " ok" : part.isDown() ? " DOWN" : " off"));
    }
    if (view.cautions().isEmpty()) {
      assertThat(run(shown)).contains(run(view.message()));
      view.health().stream()
          .filter(View.Health::isDown)
          .forEach(down -> assertThat(run(shown)).contains(run(down.sentence())));
    }
  }

  /** The words without what parts lines. */
  private static String run(String text) {
    return text.replaceAll("[│?>\\s]+", " ").strip();
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void theValueInWorkIsLargeButUnderTheMenuAndTheCautions(Situation situation) {
    View view = situation.talk().view();
    if (view.big().isBlank() || view.hasCommands() || !view.cautions().isEmpty()) {
      return;
    }
    for (int columns : new int[] {80, 120}) {
      String shown = Screens.text(view, columns, columns == 80 ? 24 : 40);
      List<String> lines = shown.lines().skip(Layout.ASKED + 1).map(String::strip).toList();
      assertThat(lines)
          .as(shown)
          .containsAnyElementsOf(
              BigGlyphs.rows(view.big(), 77, columns == 80 ? 1 : 2, Strokes.DRAWN.block())
                  .map(rows -> rows.stream().map(String::strip).toList())
                  .orElse(List.of(view.big())));
    }
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void everyTakenValueTellsHowItCame(Situation situation) {
    View view = situation.talk().view();
    String shown = Screens.text(view, 120, 40);
    boolean isRecordShown = view.cautions().isEmpty() && !view.hasCommands();
    for (View.Line line : isRecordShown ? view.lines() : List.<View.Line>of()) {
      if (line.standing() == View.Standing.TAKEN || line.standing() == View.Standing.CONFIRMED) {
        String mark = line.standing() == View.Standing.TAKEN ? " = " : " * ";
        String row =
            shown
                .lines()
                .skip(Layout.ASKED + 1)
                .filter(l -> l.contains(mark + line.label() + " "))
                .findFirst()
                .orElse("");
        // the blanks at the end of a row are not in the picture
        assertThat(row + " ")
            .as(line.label())
            .containsAnyOf(line.way(), " " + line.way().charAt(0) + " ");
      }
    }
  }
}
