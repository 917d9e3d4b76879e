package org.calamus.support;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.adapter.files.FormFile;
import org.calamus.adapter.files.TableFiles;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.Form;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Known;
import org.calamus.core.rule.Policy;
import org.calamus.core.rule.Rules;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.Interpreter;

/** The program's own form, with every field that there is, in either code set. */
public final class WholeRecord {

  private static final TableFiles TABLES = new TableFiles(Optional.empty());

  private WholeRecord() {}

  /** The form over the tables of a set. */
  public static Form form(CodeSet set) {
    return FormFile.in(Optional.empty()).read(key -> table(key, set));
  }

  /** A session's setup over the form, of a station that was issued strings. */
  public static Setup setup(CodeSet set, List<BandString> strings) {
    Form form = form(set);
    Policy usual = Fenwick.policy();
    Policy policy =
        new Policy(usual.zone(), usual.warnAfter(), usual.limit(), usual.netsOpenedAt(), strings);
    return new Setup(
        form,
        new Rules(form, Fenwick.reference(), policy),
        new Interpreter(Fenwick.vocabulary(), form),
        new Grammars(Fenwick.vocabulary().within(form)),
        new Setup.Station("Fenwick Marsh", "QX", Fenwick.ZONE),
        Map.of());
  }

  /** A session over the form that has begun, of a station that was issued a hundred bands. */
  public static Talk talk() {
    BandNumber first = BandNumber.parse("2841-55601").orElseThrow();
    BandNumber last = BandNumber.parse("2841-55700").orElseThrow();
    return talk(List.of(new BandString("1B", first, last)));
  }

  /** The same, of a station that was issued other strings. */
  public static Talk talk(List<BandString> strings) {
    Talk talk =
        new Talk(setup(CodeSet.LABORATORY, strings), Known.of(strings, List.of(), Fenwick.ZONE));
    return talk.event(new Event.Started(talk.now(), Optional.empty()));
  }

  private static CodeTable table(String key, CodeSet set) {
    return switch (key) {
      case "species" -> TABLES.species().codes();
      case "net" -> nets(key);
      case "bander", "scribe" -> listed(key, "QX", "ZB");
      default -> TABLES.codes(key, set);
    };
  }

  /** Numbered nets, and one that is no number and is struck as 101. */
  private static CodeTable nets(String name) {
    List<CodeTable.Row> rows = new ArrayList<>(listed(name, "1", "2", "3", "12").rows());
    rows.add(new CodeTable.Row("RB", "101", "reed bed"));
    return new CodeTable(name, rows);
  }

  private static CodeTable listed(String name, String... codes) {
    return new CodeTable(
        name,
        Stream.of(codes).map(c -> new CodeTable.Row(c, c.matches("\\d+") ? c : "", c)).toList());
  }
}
