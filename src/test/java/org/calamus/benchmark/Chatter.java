package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.calamus.core.record.FieldId;

/** Speech that is not meant for the console: what people say to each other over the birds. */
final class Chatter {

  private static final List<String> SENTENCES =
      List.of(
          "Could you hand me the pliers, please? They are on the other table, next to the lamp.",
          "I think it is going to rain before we have the last nets closed.",
          "There was a whole flock of them in the hedge when I walked round just now.",
          "No, leave it where it is, we can take it down after breakfast.",
          "Did anybody remember to bring the spare batteries for the torch?",
          "She said they would come back tomorrow if the wind is not too strong.",
          "Look at the fat on this one, it must have been feeding here for days.",
          "We had so many visitors last weekend that the coffee ran out.",
          "Put that bag on the hook behind me and I will do it next.",
          "My car would not start this morning, so I walked all the way from the village.",
          "Is that the telephone ringing, or is it something in the reeds?",
          "You can let it go from the window, it wants to get out anyway.",
          "The water is much higher than it was last year at this time.",
          "Hold the wing a little flatter and do not press it against the rule.",
          "He wrote a long letter about it, but nobody has answered him yet.",
          "Let us wait for a minute until the others are here as well.",
          "I have never seen a bird so calm while it was being measured.",
          "Somebody should mend the hole in the net at the far end.",
          "What time does the sun come up tomorrow, does anyone know?",
          "The children want to see an owl, but I do not think we shall catch one.",
          "It flew straight into the other net after I had let it go.",
          "Would you like some more tea, or shall I pour it away?",
          "They have cut all the willows along the bank, which is a pity.",
          "Write it on the board so that we do not forget about it again.");

  /** What is asked while the chatter is heard. */
  private static final List<List<String>> MOMENTS =
      Stream.of(
              FieldId.SPECIES,
              FieldId.BAND,
              FieldId.AGE,
              FieldId.SEX,
              FieldId.FAT,
              FieldId.WING,
              FieldId.MASS,
              FieldId.HOW_AGED,
              FieldId.NET,
              FieldId.FLIGHT_MOULT)
          .map(Moments::asking)
          .toList();

  private Chatter() {}

  /** All of it for a half. */
  static List<Said> all(Half half) throws IOException {
    List<Said> all = new ArrayList<>(atMoments("sentences", SENTENCES, half));
    all.addAll(readback(half));
    for (Path folder : RecordedPrompts.folders()) {
      List<String> prompts =
          RecordedPrompts.prompts(folder).stream().map(p -> p.getFileName().toString()).toList();
      all.addAll(atMoments("prompts", prompts, half));
      List<String> sentences =
          RecordedPrompts.sentences(folder).stream().map(p -> p.getFileName().toString()).toList();
      all.addAll(atMoments("talk", sentences, half));
    }
    all.addAll(atOneMoment("talk", OtherLanguages.talk(half)));
    all.addAll(atOneMoment("calls", OtherLanguages.calls(half)));
    all.addAll(atOneMoment("spelling", OtherLanguages.spelling(half)));
    if (half == Half.REPORTING) {
      all.addAll(atAllMoments("reader", OtherPeople.sentences()));
      all.addAll(atAllMoments("words", OtherPeople.words()));
    }
    for (String kind : Sounds.kinds()) {
      all.addAll(atMoments(kind, Sounds.of(kind, 3), half));
    }
    return all;
  }

  /** What the console says, as its ears would hear it if they were open meanwhile. */
  private static List<Said> readback(Half half) {
    List<Said> all = new ArrayList<>();
    for (int i = 0; i < MOMENTS.size(); i++) {
      List<String> before = MOMENTS.get(i);
      if (!before.isEmpty() && i % 2 == half.ordinal()) {
        Moment now = Moments.after(before);
        String spoken = now.replySince(Moments.after(before.subList(0, before.size() - 1)));
        all.add(new Said("own readback", before, "", spoken));
      }
    }
    return all;
  }

  /** A half of the texts, each said while two different things are asked. */
  private static List<Said> atMoments(String set, List<String> texts, Half half) {
    List<String> mine = new ArrayList<>();
    for (int i = half.ordinal(); i < texts.size(); i += 2) {
      mine.add(texts.get(i));
    }
    return atAllMoments(set, mine);
  }

  private static List<Said> atOneMoment(String set, List<String> texts) {
    List<Said> all = new ArrayList<>();
    for (int i = 0; i < texts.size(); i++) {
      all.add(new Said(set, MOMENTS.get(i % MOMENTS.size()), "", texts.get(i)));
    }
    return all;
  }

  private static List<Said> atAllMoments(String set, List<String> texts) {
    List<Said> all = new ArrayList<>();
    for (int i = 0; i < texts.size(); i++) {
      for (int k = 0; k < 2; k++) {
        List<String> before = MOMENTS.get((i + 5 * k) % MOMENTS.size());
        all.add(new Said(set, before, "", texts.get(i)));
      }
    }
    return all;
  }
}
