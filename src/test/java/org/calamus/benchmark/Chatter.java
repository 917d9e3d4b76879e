package org.calamus.benchmark;

import java.util.ArrayList;
import java.util.List;

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

  /** What is asked while the chatter is heard, each by what was said before. */
  private static final List<List<String>> MOMENTS =
      List.of(
          List.of(),
          List.of("two eight four one five five six zero one"),
          List.of("two eight four one five five six zero one", "song sparrow", "second year"),
          List.of(
              "two eight four one five five six zero one", "song sparrow", "second year", "male"),
          List.of(
              "two eight four one five five six zero one",
              "song sparrow",
              "second year",
              "male",
              "six five"),
          List.of(
              "two eight four one five five six zero one",
              "song sparrow",
              "second year",
              "male",
              "six five",
              "two zero point one"));

  private Chatter() {}

  /** A half of the sentences, each said while two different things are asked. */
  static List<Said> of(Half half) {
    return atMoments(SENTENCES, half);
  }

  /** The same with names of recordings in the place of sentences. */
  static List<Said> atMoments(List<String> texts, Half half) {
    List<Said> all = new ArrayList<>();
    for (int i = half.ordinal(); i < texts.size(); i += 2) {
      for (int k = 0; k < 2; k++) {
        List<String> before = MOMENTS.get((i / 2 + 3 * k) % MOMENTS.size());
        all.add(new Said("chatter", before, "", texts.get(i)));
      }
    }
    return all;
  }
}
