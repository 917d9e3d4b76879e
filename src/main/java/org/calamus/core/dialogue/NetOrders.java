package org.calamus.core.dialogue;

import java.time.Instant;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.calamus.core.effort.ClockTime;
import org.calamus.core.effort.Net;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.effort.NetLog;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;
import org.calamus.core.speech.Heard;
import org.calamus.core.speech.Meaning;

/**
 * The part of the dialogue that enters when nets were opened and closed. To open a net that is
 * open, with a time, corrects the time of its opening; likewise for closing.
 */
final class NetOrders {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** A net's code, a point and a time, of which either may be left out. */
  private static final Pattern KEYED =
      Pattern.compile("([0-9A-Z]*)(?:\\.([01]\\d|2[0-3])([0-5]\\d))?");

  private static final String UNNAMED_NETS = "[1-9]\\d?";

  private final Setup setup;
  private final Prompts prompts;

  NetOrders(Setup setup) {
    this.setup = setup;
    this.prompts = new Prompts(setup);
  }

  /** Asks which nets, and when. */
  Step ask(State state, NetEvent.What what) {
    boolean isOther = state.question().filter(q -> !(q instanceof Question.Nets)).isPresent();
    if (isOther) {
      return prompts.miss(state, Questions.answers(state.question().get()));
    }
    if (!state.face().keys().isEmpty() && state.question().isEmpty()) {
      return prompts.notEntered(state);
    }
    Optional<FieldId> field = Optional.of(FieldId.NET).filter(setup.form()::has);
    State asked =
        state
            .withQuestion(Optional.of(new Question.Nets(what, field)))
            .message("")
            .face(f -> f.withoutBig().withKeys(""));
    return Step.of(asked)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(verb(what) + " all nets, or which one");
  }

  private static String verb(NetEvent.What what) {
    return what == NetEvent.What.OPENED ? "open" : "close";
  }

  /** The question as the screen shows it. */
  static String shown(Question.Nets question) {
    return "Which nets were "
        + question.what().word()
        + "? Enter: all, now. Number and Enter: that one. A point and four digits before Enter: the"
        + " time, as in 5.0630 or .0630.";
  }

  /** What answers the question, as said. */
  static String answers() {
    return "say affirm for all, or a net";
  }

  /** Keys were struck: a net, a time, or both. */
  Step keyed(State state, String keys, Instant at) {
    Matcher matcher = KEYED.matcher(keys);
    if (!matcher.matches()) {
      return unclear(state, "A net is its number; a time is a point and four digits.");
    }
    Optional<LocalTime> time =
        Optional.ofNullable(matcher.group(2))
            .map(h -> LocalTime.of(Integer.parseInt(h), Integer.parseInt(matcher.group(3))));
    return matcher.group(1).isEmpty()
        ? all(state, time, at)
        : one(state, matcher.group(1), time, at);
  }

  /** A net was said, or a time, or both. */
  Step said(State state, Meaning.Values given, Instant at) {
    Optional<String> net = Optional.empty();
    Optional<LocalTime> time = Optional.empty();
    for (Meaning.Item item : given.items()) {
      boolean isNet = item.field().filter(f -> f != FieldId.NET).isEmpty();
      boolean isTime = item.field().filter(f -> f == FieldId.TIME).isPresent();
      if (isNet && item.heard() instanceof Heard.One one) {
        net = Optional.of(one.value().text());
      } else if (isTime
          && item.heard() instanceof Heard.One one
          && one.value() instanceof FieldValue.TimeOfDay clock) {
        time = Optional.of(clock.time());
      } else {
        return prompts.miss(state, answers());
      }
    }
    return net.isPresent() ? one(state, net.get(), time, at) : all(state, time, at);
  }

  /** All nets. */
  Step all(State state, Optional<LocalTime> time, Instant at) {
    NetEvent.What what = ((Question.Nets) state.question().orElseThrow()).what();
    NetLog log = state.desk().nets();
    List<String> nets =
        setup.nets().isEmpty()
            ? (what == NetEvent.What.OPENED ? List.of() : log.open())
            : setup.nets().stream().map(Net::code).toList();
    if (nets.isEmpty()) {
      return what == NetEvent.What.OPENED
          ? unclear(state, "The station file names no nets: give the number of one.")
          : told(state, List.of(), "No net is open.", "no net is open");
    }
    boolean wanted = what == NetEvent.What.OPENED;
    List<String> others = nets.stream().filter(n -> log.isOpen(n) != wanted).toList();
    boolean corrects = others.isEmpty() && time.isPresent();
    if (others.isEmpty() && !corrects) {
      return told(
          state, List.of(), "All nets are " + state(what) + ".", "all nets are " + state(what));
    }
    return enter(state, what, corrects ? nets : others, time, at);
  }

  private static String state(NetEvent.What what) {
    return what == NetEvent.What.OPENED ? "open" : "closed";
  }

  /** One net, by its code. */
  Step one(State state, String code, Optional<LocalTime> time, Instant at) {
    NetEvent.What what = ((Question.Nets) state.question().orElseThrow()).what();
    Optional<String> net =
        setup.nets().isEmpty()
            ? Optional.of(code).filter(c -> c.matches(UNNAMED_NETS))
            : setup.nets().stream()
                .map(Net::code)
                .filter(c -> c.equalsIgnoreCase(code))
                .findFirst()
                .or(() -> numbered(code));
    if (net.isEmpty()) {
      return unclear(state, "The station has no net " + code + ".");
    }
    Optional<NetEvent> last = state.desk().nets().last(net.get());
    boolean isSo = state.desk().nets().isOpen(net.get()) == (what == NetEvent.What.OPENED);
    if (isSo && time.isEmpty()) {
      String since = last.map(e -> " since " + clock(e.at())).orElse("");
      return told(
          state,
          List.of(),
          "Net " + net.get() + " is " + state(what) + since + "; with a time that is corrected.",
          "net " + spoken(net.get()) + " is " + state(what));
    }
    return enter(state, what, List.of(net.get()), time, at);
  }

  /** The net that is struck by a number of its own, since its code is none. */
  private Optional<String> numbered(String digits) {
    return setup.form().has(FieldId.NET)
            && setup.form().spec(FieldId.NET).kind() instanceof FieldKind.Coded coded
        ? coded.table().byDigits(digits).map(CodeTable.Row::code)
        : Optional.empty();
  }

  private Step enter(
      State state, NetEvent.What what, List<String> nets, Optional<LocalTime> time, Instant at) {
    Instant when = time.map(t -> ClockTime.before(t, setup.station().zone(), at)).orElse(at);
    List<NetEvent> entered = new ArrayList<>();
    List<String> refused = new ArrayList<>();
    NetLog log = state.desk().nets();
    for (String net : nets) {
      Optional<NetEvent> last = log.last(net);
      boolean corrects = last.filter(e -> e.what() == what).isPresent();
      Optional<NetEvent> before = corrects ? log.beforeLast(net) : last;
      boolean isFirst = before.isEmpty() && what == NetEvent.What.CLOSED;
      if (isFirst || before.filter(e -> !when.isAfter(e.at())).isPresent()) {
        refused.add(why(net, before));
      } else {
        Optional<Long> supersedes = last.filter(e -> corrects).map(NetEvent::id);
        long id = log.nextId() + entered.size();
        entered.add(new NetEvent(id, net, what, when, at, setup.station().bander(), supersedes));
      }
    }
    return done(state, what, when, entered, refused);
  }

  private String why(String net, Optional<NetEvent> before) {
    return before
        .map(
            e -> "net " + net + " was " + e.what().word() + " at " + clock(e.at()) + ", after that")
        .orElse("net " + net + " was never opened");
  }

  private Step done(
      State state, NetEvent.What what, Instant when, List<NetEvent> entered, List<String> refused) {
    if (entered.isEmpty()) {
      return unclear(state, "Not entered: " + String.join("; ", refused) + ".");
    }
    List<String> nets = entered.stream().map(NetEvent::net).toList();
    boolean isOne = nets.size() == 1;
    String shown =
        (isOne ? "Net " : "Nets ")
            + String.join(", ", nets)
            + " "
            + what.word()
            + " at "
            + clock(when)
            + "."
            + (refused.isEmpty() ? "" : " Not entered: " + String.join("; ", refused) + ".");
    String spoken =
        (isOne ? "net " + spoken(nets.get(0)) : Spoken.digits("" + nets.size()) + " nets")
            + " "
            + what.word()
            + " "
            + Spoken.digits(clock(when).replace(":", ""));
    return told(state, entered, shown, spoken);
  }

  /** The question is answered: what was entered is stored, and the bird is gone on with. */
  private Step told(State state, List<NetEvent> entered, String shown, String spoken) {
    State after =
        state.withQuestion(Optional.empty()).face(f -> f.withKeys("").withoutBig()).message(shown);
    for (NetEvent event : entered) {
      after = after.desk(d -> d.with(event));
    }
    Step step = Step.of(after);
    if (!entered.isEmpty()) {
      step = step.then(new Effect.JournalNets(entered)).then(new Effect.Sound(Tone.TAKEN));
    }
    return step.then(s -> prompts.prompt(s, spoken));
  }

  private Step unclear(State state, String shown) {
    return prompts
        .miss(state.face(f -> f.withKeys("")), answers())
        .then(s -> Step.of(s.message(shown)));
  }

  /** The net as it is said: by its name, or else by its code. */
  private String spoken(String code) {
    return setup.nets().stream()
        .filter(n -> n.code().equals(code) && !n.name().equals(code))
        .map(Net::name)
        .findFirst()
        .orElseGet(() -> Spoken.characters(code));
  }

  private String clock(Instant at) {
    return CLOCK.format(at.atZone(setup.station().zone()));
  }
}
