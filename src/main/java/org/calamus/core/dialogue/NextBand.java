package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.form.Species;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.BandLedger;
import org.calamus.core.speech.Heard;

/** Which band goes on the bird in the hand: its size, and the next number of that size. */
final class NextBand {

  private final Setup setup;

  NextBand(Setup setup) {
    this.setup = setup;
  }

  /**
   * The sizes to choose from, the first being proposed: what the leg gauge says, or else what the
   * species table recommends for the bird's sex; none where neither is known.
   */
  List<String> sizes(State state) {
    Optional<CaptureRecord> record = state.record();
    Optional<String> gauge = record.flatMap(r -> r.code(FieldId.LEG_GAUGE));
    if (gauge.isPresent()) {
      return List.of(gauge.get());
    }
    Optional<Species> species =
        record
            .flatMap(r -> r.code(FieldId.SPECIES))
            .flatMap(setup.rules().reference().species()::byCode);
    return species
        .map(s -> s.bandSizes(record.flatMap(r -> r.code(FieldId.SEX))))
        .orElse(List.of());
  }

  /** The next band of the first of these sizes that has one; of the string used last otherwise. */
  Optional<BandNumber> of(State state) {
    BandLedger ledger = state.known().ledger();
    return sizes(state).stream()
        .flatMap(size -> ledger.next(size).stream())
        .findFirst()
        .or(ledger::expected);
  }

  /**
   * The next band on the string for the eye: the one that will be put next. Where it is on the bird
   * in the hand already, that is the one behind it; empty where there is none left.
   */
  Optional<BandNumber> behindBird(State state) {
    Optional<BandNumber> next = of(state);
    boolean isOnBird =
        next.isPresent()
            && state
                .record()
                .filter(r -> r.kind().putsBand() && r.band(FieldId.BAND).equals(next))
                .isPresent();
    return isOnBird ? behind(state.known().ledger(), next.get()) : next;
  }

  /** The first band of the same string that nothing is known of yet. */
  private static Optional<BandNumber> behind(BandLedger ledger, BandNumber band) {
    Optional<BandNumber> last = ledger.stringOf(band).map(s -> s.last());
    BandNumber at = band;
    while (last.isPresent() && !at.equals(last.get())) {
      at = at.successor();
      if (ledger.fateOf(at).isEmpty()) {
        return Optional.of(at);
      }
    }
    return Optional.empty();
  }

  /**
   * The band that last digits complete: none while a number is read from the bird's own band, which
   * must be read whole.
   */
  Optional<BandNumber> completing(State state) {
    if (state.question().isPresent() && state.question().get() instanceof Question.Reopen reopen) {
      return reopen.last().band().or(() -> of(state));
    }
    boolean isRead =
        Dialogue.askedField(state)
            .flatMap(f -> state.record().flatMap(r -> r.kind().bandRead()).filter(f::equals))
            .isPresent();
    return isRead ? Optional.empty() : of(state);
  }

  /**
   * The band of which the last digits were given: the proposed one, or else the only next band of
   * another string that ends so, or else one of the proposed one's string.
   */
  BandNumber ending(State state, Heard.Ending ending) {
    boolean isProposed = of(state).map(ending.value()::equals).orElse(false);
    List<BandNumber> others =
        state.known().ledger().allExpected().stream()
            .filter(b -> b.suffix().endsWith(ending.digits()))
            .toList();
    return !isProposed && others.size() == 1 ? others.get(0) : ending.value();
  }

  /** What to say when the band is asked: size and last digits; empty where nothing is known. */
  String proposal(State state) {
    Optional<BandNumber> next = of(state);
    boolean isProposed = state.record().isPresent() && !state.isCorrecting() && next.isPresent();
    if (!isProposed) {
      return "";
    }
    String size =
        state
            .known()
            .ledger()
            .stringOf(next.get())
            .map(s -> s.size())
            .or(() -> sizes(state).stream().findFirst())
            .filter(s -> !s.isEmpty())
            .map(s -> " size " + spokenSize(s) + ".")
            .orElse("");
    return size + " next " + Spoken.digits(next.get().lastDigits());
  }

  /** A size as banders say it: the digit, and the letter by its name. */
  static String spokenSize(String size) {
    StringBuilder words = new StringBuilder();
    for (char c : size.toCharArray()) {
      words.append(words.length() == 0 ? "" : " ");
      words.append(
          Character.isDigit(c)
              ? Spoken.digits(String.valueOf(c))
              : String.valueOf(c).toLowerCase(java.util.Locale.ROOT));
    }
    return words.toString();
  }
}
