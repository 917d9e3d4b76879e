package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Unit;
import org.calamus.port.Forms;
import org.calamus.port.SettingsException;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;

/**
 * The file {@code form.toml}: a table of fields, and for each kind of capture the list of what is
 * asked. Behind a field's name {@code !} means that it is required, {@code ?} that it is never
 * asked but taken where it is named.
 *
 * <pre>{@code
 * [fields.wing]
 * label = 'Wing chord'
 * say = 'wing'
 * least = '25'
 * most = '400'
 * decimals = 1
 *
 * [kinds]
 * new = ['species!', 'band!', 'wing', 'note?']
 * }</pre>
 */
public final class FormFile implements Forms {

  private static final String NAME = "form.toml";
  private static final Set<String> KEYS =
      Set.of("label", "say", "least", "most", "decimals", "usual");
  private static final int MOST_CODES = 4;

  private final Optional<Path> folder;
  private final String resourceFolder;

  private FormFile(Optional<Path> folder, String resourceFolder) {
    this.folder = folder;
    this.resourceFolder = resourceFolder;
  }

  /**
   * The user's form, or else the program's own.
   *
   * @param folder the folder of the user's tables; need not exist
   */
  public static FormFile in(Optional<Path> folder) {
    return new FormFile(folder, "/tables");
  }

  /** The form of the demonstration's station, which the program carries. */
  public static FormFile ofDemonstration() {
    return new FormFile(Optional.empty(), "/demo-data");
  }

  @Override
  public Form read(Function<String, CodeTable> tables) {
    String file = TextSource.shown(folder, resourceFolder.substring(1), NAME);
    List<String> mistakes = new ArrayList<>();
    TomlParseResult toml =
        Toml.parse(String.join("\n", TextSource.lines(folder, resourceFolder, NAME)));
    toml.errors()
        .forEach(e -> mistakes.add(TomlSection.at(file, e.position(), e.getMessage() + ".")));
    refuse(mistakes);
    TomlSection root = TomlSection.root(file, toml, mistakes);
    root.allowOnly(Set.of("title", "fields", "kinds"));
    List<FieldSpec> fields = fields(root, toml, tables);
    Map<CaptureKind, List<Form.Ask>> asks = new EnumMap<>(CaptureKind.class);
    TomlSection kinds = root.section("kinds");
    for (CaptureKind kind : CaptureKind.values()) {
      TomlArray list = toml.getArray(List.of("kinds", kind.key()));
      if (list != null) {
        asks.put(kind, asks(kinds, kind.key(), list, fields));
      }
    }
    kinds.allowOnly(keys(CaptureKind.values()));
    if (!asks.containsKey(CaptureKind.NEW)) {
      kinds.mistake("The form needs a list of fields for the kind new.");
    }
    refuse(mistakes);
    return new Form(fields, asks);
  }

  private static void refuse(List<String> mistakes) {
    if (!mistakes.isEmpty()) {
      throw new SettingsException(mistakes);
    }
  }

  private static Set<String> keys(CaptureKind[] kinds) {
    Set<String> keys = new LinkedHashSet<>();
    for (CaptureKind kind : kinds) {
      keys.add(kind.key());
    }
    return keys;
  }

  private static List<FieldSpec> fields(
      TomlSection root, TomlParseResult toml, Function<String, CodeTable> tables) {
    TomlSection all = root.section("fields");
    List<FieldSpec> fields = new ArrayList<>();
    if (toml.getTable("fields") == null) {
      root.mistake("The form needs a table [fields.NAME] for every field.");
      return fields;
    }
    for (String key : inOrder(toml)) {
      Optional<FieldId> id = FieldId.ofKey(key);
      if (id.isEmpty()) {
        all.mistake(key, "\"" + key + "\" is no field that Calamus knows.");
        continue;
      }
      TomlSection section = all.section(key);
      section.allowOnly(KEYS);
      String label = section.text("label");
      String say = section.text("say");
      String usual = section.textOr("usual", "");
      kind(id.get(), section, tables)
          .ifPresent(
              kind ->
                  fields.add(
                      new FieldSpec(
                          id.get(),
                          label,
                          say,
                          kind,
                          Optional.of(usual).filter(u -> !u.isEmpty()))));
    }
    return fields;
  }

  /** The fields' names in the order of the file, which the parser does not keep by itself. */
  private static List<String> inOrder(TomlParseResult toml) {
    return toml.getTable("fields").keySet().stream()
        .sorted(
            java.util.Comparator.comparing(
                key -> toml.inputPositionOf(List.of("fields", key)),
                java.util.Comparator.comparingInt(org.tomlj.TomlPosition::line)
                    .thenComparingInt(org.tomlj.TomlPosition::column)))
        .toList();
  }

  private static Optional<FieldKind> kind(
      FieldId id, TomlSection section, Function<String, CodeTable> tables) {
    return switch (id) {
      case BAND, OLD_BAND -> Optional.of(new FieldKind.Band());
      case TIME -> Optional.of(new FieldKind.Time());
      case DATE -> Optional.of(new FieldKind.Date());
      case NOTE -> Optional.of(new FieldKind.Note());
      case HOW_AGED, HOW_SEXED, DISPOSITION ->
          Optional.of(new FieldKind.CodedMany(tables.apply(id.key()), MOST_CODES));
      case BAND_SIZE, LEG_GAUGE ->
          Optional.of(new FieldKind.Coded(tables.apply(FieldId.BAND_SIZE.key())));
      case MASS -> measured(section, Unit.GRAM);
      case WING, TAIL, TARSUS, CULMEN -> measured(section, Unit.MILLIMETRE);
      default -> Optional.of(new FieldKind.Coded(tables.apply(id.key())));
    };
  }

  private static Optional<FieldKind> measured(TomlSection section, Unit unit) {
    BigDecimal least = section.decimalOr("least", BigDecimal.ZERO);
    BigDecimal most = section.decimalOr("most", BigDecimal.ZERO);
    int decimals = section.whole("decimals", 0, 3);
    if (most.compareTo(least) <= 0) {
      section.mistake("A measured field needs its limits: least and most.");
      return Optional.empty();
    }
    return Optional.of(new FieldKind.Measured(unit, least, most, decimals));
  }

  private static List<Form.Ask> asks(
      TomlSection kinds, String key, TomlArray list, List<FieldSpec> fields) {
    List<Form.Ask> asks = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      String text = list.get(i) instanceof String s ? s.strip() : "";
      String name = text.replaceFirst("[!?]$", "");
      Optional<FieldId> field =
          FieldId.ofKey(name).filter(f -> fields.stream().anyMatch(s -> s.id() == f));
      if (field.isEmpty()) {
        kinds.mistake(key, "\"" + text + "\" is no field of this form.");
      } else if (asks.stream().anyMatch(a -> a.field() == field.get())) {
        kinds.mistake(key, "\"" + name + "\" stands twice.");
      } else {
        asks.add(new Form.Ask(field.get(), need(text)));
      }
    }
    if (asks.stream().allMatch(a -> a.need() == Form.Need.BY_NAME)) {
      kinds.mistake(key, "At least one field must be asked.");
    }
    return asks;
  }

  private static Form.Need need(String text) {
    if (text.endsWith("!")) {
      return Form.Need.REQUIRED;
    }
    return text.endsWith("?") ? Form.Need.BY_NAME : Form.Need.ASKED;
  }
}
