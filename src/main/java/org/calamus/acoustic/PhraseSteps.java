package org.calamus.acoustic;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Lays out a phrase. Each of its words meets the next one sound to sound, or with a pause between
 * them; the label is on its first step, so that nothing but the whole of it can be heard: of "black
 * chinned hummingbird" no "chinned" is left that sounds like "two".
 */
final class PhraseSteps {

  private final PhoneTable phones;
  private final KaldiPhones numbers;
  private final Settings settings;
  private final PhoneSteps steps;

  PhraseSteps(PhoneTable phones, KaldiPhones numbers, Settings settings, PhoneSteps steps) {
    this.phones = phones;
    this.numbers = numbers;
    this.settings = settings;
    this.steps = steps;
  }

  /** Adds a phrase between two states, in both of which there is silence beside it. */
  void add(Pronunciation way, int word, int entry, int end) {
    Map<Integer, Integer> before = Map.of(phones.silence(), entry);
    int last = way.phones().size() - 1;
    for (int place = 0; place < last; place++) {
      before = addPhone(way, place, word, before);
    }
    lead(way, last, word, before, phones.silence(), end, 0);
  }

  /**
   * Adds a phone that is not the last.
   *
   * @param before the states that it begins in, by what stands before it
   * @return those that the next one begins in
   */
  private Map<Integer, Integer> addPhone(
      Pronunciation way, int place, int word, Map<Integer, Integer> before) {
    Map<Integer, Integer> behind = new LinkedHashMap<>();
    boolean isSeam = way.seams().contains(place + 1);
    int next = steps.newState();
    lead(way, place, word, before, way.phones().get(place + 1), next, isSeam ? noPauseCost() : 0);
    behind.put(way.phones().get(place), next);
    if (isSeam) {
      int pause = steps.newState();
      lead(way, place, word, before, phones.silence(), pause, pauseCost());
      behind.put(phones.silence(), addPause(pause));
    }
    return behind;
  }

  private int addPause(int from) {
    PhoneSteps.Variant silence = steps.variant(phones.silence());
    PhoneSteps.Exit exit = steps.hear(from, KaldiPhones.PAUSE_WITHIN, silence, 0, 0);
    int behind = steps.newState();
    steps.join(exit.state(), behind, exit.cost(), 0);
    return behind;
  }

  /** Adds the variants of a phone that lead to one state. */
  private void lead(
      Pronunciation way,
      int place,
      int word,
      Map<Integer, Integer> before,
      int right,
      int target,
      double cost) {
    int phone = way.phones().get(place);
    int number = numbers.number(phone, way.asOneWord().position(place));
    boolean isFirst = place == 0;
    double begin = isFirst ? cost(way) : 0;
    before.forEach(
        (left, from) -> {
          PhoneSteps.Variant variant = steps.variant(way.position(place), phone, left, right);
          PhoneSteps.Exit exit = steps.hear(from, number, variant, isFirst ? word : 0, begin);
          steps.join(exit.state(), target, exit.cost(), cost);
        });
  }

  private double cost(Pronunciation way) {
    return settings.wordCost() * way.words() + settings.phrasePhoneCost() * way.phones().size();
  }

  private double pauseCost() {
    return -Math.log(settings.phrasePauseProbability());
  }

  private double noPauseCost() {
    return -Math.log(1 - settings.phrasePauseProbability());
  }
}
