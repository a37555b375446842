package org.taketally.records.dictionary;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.Unit;

/** Turns the JSON of a dictionary into rules, or says what is wrong with it. */
final class DictionaryParser extends JsonParts {

  static final Set<String> SHEET_KEYS =
      Set.of(
          "$schema",
          "about",
          "encoding",
          "delimiter",
          "sheet",
          "sheets",
          "decimal",
          "dates",
          "missing",
          "season_starts",
          "columns",
          "constants",
          "ignore",
          "blank_result",
          "heading_row",
          "wide",
          "fill_down",
          "counts",
          "dates_by",
          "batches",
          "files");
  static final Set<String> COLUMN_KEYS =
      Set.of("about", "from", "dead", "unit", "dates", "decimal", "missing", "same", "levels");

  private static final Set<String> RESULTS =
      Set.of(RecordColumn.TAKES.columnName(), RecordColumn.OUTCOME.columnName());

  private final ShapeParser shapes;

  DictionaryParser(String file) {
    super(file);
    this.shapes = new ShapeParser(file);
  }

  SheetRules rules(JsonObject json) {
    requireKeys("", json, SHEET_KEYS);
    Map<String, ColumnEntry> columns = new LinkedHashMap<>();
    for (Map.Entry<String, JsonElement> column : object("", json, "columns").entrySet()) {
      columns.put(requireKnown(column.getKey()), entry(column.getKey(), column.getValue()));
    }
    Map<String, String> constants = new LinkedHashMap<>();
    for (Map.Entry<String, JsonElement> one : object("", json, "constants").entrySet()) {
      constants.put(requireKnown(one.getKey()), text("constants." + one.getKey(), one.getValue()));
    }
    Optional<String> dates = string("", json, "dates");
    dates.ifPresent(pattern -> requirePattern("dates", pattern));
    return new SheetRules(
        encoding(json),
        string("", json, "delimiter").map(this::delimiter),
        sheets(json),
        string("", json, "decimal").map(sign -> decimal("decimal", sign)),
        dates,
        strings("", json, "missing").orElse(Set.of()),
        seasonStart(json),
        columns,
        constants,
        strings("", json, "ignore").orElse(Set.of()),
        string("", json, "blank_result").map(this::blankResult),
        strings("", json, "batches").orElse(Set.of()),
        shapes.shape(json),
        shapes.datesBy(json));
  }

  private List<String> sheets(JsonObject json) {
    if (json.has("sheet") && json.has("sheets")) {
      throw wrong("sheet", "sheet and sheets", "one of them", "list all names under sheets");
    }
    return json.has("sheet")
        ? List.of(text("sheet", json.get("sheet")))
        : List.copyOf(strings("", json, "sheets").orElse(Set.of()));
  }

  private BlankResult blankResult(String word) {
    for (BlankResult meaning : BlankResult.values()) {
      if (meaning.name().toLowerCase(Locale.ROOT).equals(word)) {
        return meaning;
      }
    }
    throw wrong(
        "blank_result",
        word,
        "\"unassessed\", \"failed\" or \"taken\"",
        "write failed where only takes were written down, taken where only failures were,"
            + " unassessed where nobody looked");
  }

  private ColumnEntry entry(String name, JsonElement value) {
    String path = "columns." + name;
    requireOurNameFirst(path, name, value);
    if (value.isJsonPrimitive()) {
      ColumnEntry none = ColumnEntry.NONE;
      return new ColumnEntry(
          Optional.of(text(path, value)),
          none.dead(),
          none.unit(),
          none.dates(),
          none.decimal(),
          none.missing(),
          none.same(),
          none.levels());
    }
    JsonObject json = requireObject(path, value);
    requireKeys(path + ".", json, COLUMN_KEYS);
    ColumnRule rule = KnownColumns.rule(name);
    Optional<String> unit = string(path + ".", json, "unit");
    unit.ifPresent(u -> requireUnit(path + ".unit", rule, u));
    requireEffect(path, name, json);
    Optional<String> dates = string(path + ".", json, "dates");
    dates.ifPresent(pattern -> requirePattern(path + ".dates", pattern));
    return new ColumnEntry(
        string(path + ".", json, "from"),
        string(path + ".", json, "dead").map(String::strip),
        unit,
        dates,
        string(path + ".", json, "decimal").map(sign -> decimal(path + ".decimal", sign)),
        strings(path + ".", json, "missing"),
        same(path, rule, json),
        levels(path, rule, json));
  }

  /** Refuses a mapping the wrong way round: the heading first, our name second. */
  private void requireOurNameFirst(String path, String name, JsonElement value) {
    JsonElement from =
        value.isJsonObject() && value.getAsJsonObject().has("from")
            ? value.getAsJsonObject().get("from")
            : value;
    if (from.isJsonPrimitive()
        && !KnownColumns.isKnown(name)
        && KnownColumns.isKnown(from.getAsString())) {
      throw wrong(
          path,
          from.getAsString(),
          "our name first and your heading second",
          "turn it round: \"%s\": \"%s\"".formatted(from.getAsString(), name));
    }
  }

  private boolean levels(String path, ColumnRule rule, JsonObject json) {
    if (!json.has("levels")) {
      return false;
    }
    JsonElement value = json.get("levels");
    if (!value.isJsonPrimitive() || !value.getAsJsonPrimitive().isBoolean()) {
      throw wrong(path + ".levels", value.toString(), "true or false", "write true without quotes");
    }
    if (RecordColumn.named(rule.name()).isPresent()) {
      throw wrong(
          path + ".levels",
          value.toString(),
          "a column of your own",
          "leave it out: what " + rule.name() + " holds is settled");
    }
    return value.getAsBoolean();
  }

  /** Refuses what would be read and then never used. */
  private void requireEffect(String path, String name, JsonObject json) {
    boolean ours = KnownColumns.isKnown(name);
    ColumnKind kind = KnownColumns.kind(name);
    boolean number = kind == ColumnKind.NUMBER || kind == ColumnKind.COUNT;
    Map<String, Boolean> useless = new LinkedHashMap<>();
    useless.put("dates", kind != ColumnKind.DATE);
    useless.put("decimal", ours && !number);
    useless.put("same", ours && kind != ColumnKind.LEVELS && !isTakes(name));
    useless.put("dead", !RESULTS.contains(name));
    useless.forEach(
        (key, ineffective) -> {
          if (ineffective && json.has(key)) {
            throw wrong(
                path + "." + key,
                json.get(key).toString(),
                "nothing: " + name + " holds " + held(kind),
                "take it out, or put it under the column it belongs to");
          }
        });
  }

  private static String held(ColumnKind kind) {
    return switch (kind) {
      case TEXT -> "free text";
      case LEVELS -> "names";
      case DATE -> "days";
      case NUMBER -> "numbers";
      case COUNT -> "counts";
    };
  }

  private Map<String, String> same(String column, ColumnRule rule, JsonObject entry) {
    String path = column + ".same";
    JsonObject json = object(column + ".", entry, "same");
    Set<String> missing = strings(column + ".", entry, "missing").orElse(Set.of());
    Map<String, String> meant = new LinkedHashMap<>();
    for (String name : json.keySet()) {
      if (rule.closed() && !rule.allowed().contains(name)) {
        throw wrong(
            path, name, "one of " + rule.allowed(), "put our word first, yours in the list");
      }
      if (isTakes(rule.name())
          && !name.equals(CommonWords.ALL_GRAFTS)
          && !name.matches("\\d{1,9}")) {
        throw wrong(
            path,
            name,
            "a whole number, or \"all\" for all grafts of the row",
            "put the count first, the word in the list: \"same\": {\"0\": [\"none\"]}");
      }
      for (String spelling : spellings(path + "." + name, json.get(name))) {
        requireMeaning(path, name, spelling, missing);
        String other = meant.put(spelling, name);
        if (other != null) {
          throw wrong(
              path,
              spelling + " under " + other + " and under " + name,
              "each spelling once",
              "decide which one it means");
        }
        if (!spelling.equals(name) && json.has(spelling)) {
          throw wrong(
              path,
              spelling + " as a name and as a spelling of " + name,
              "names that aren't spellings of another",
              "list all spellings under " + name);
        }
      }
    }
    return meant;
  }

  private static boolean isTakes(String name) {
    return name.equals(RecordColumn.TAKES.columnName());
  }

  private void requireMeaning(String path, String name, String spelling, Set<String> missing) {
    if (spelling.isEmpty()) {
      boolean result = path.contains("." + RecordColumn.OUTCOME.columnName() + ".");
      throw wrong(
          path,
          "a blank as a spelling of " + name,
          "words that stand in the sheet",
          result
              ? "say what a blank result means with \"blank_result\": \"failed\","
                  + " \"taken\" or \"unassessed\" beside columns"
              : "give a value for all rows under constants, or fill the blanks in");
    }
    if (missing.contains(spelling)) {
      throw wrong(
          path,
          spelling + " as a spelling of " + name + " and under missing",
          "one meaning",
          "take it out of one of the two");
    }
  }

  private Set<String> spellings(String path, JsonElement value) {
    if (value.isJsonPrimitive()) {
      return Set.of(text(path, value));
    }
    return list(path, value);
  }

  private Charset encoding(JsonObject json) {
    String name = string("", json, "encoding").orElse("UTF-8");
    try {
      return Charset.forName(name);
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      throw wrong(
          "encoding",
          name,
          "the name of an encoding, such as " + StandardCharsets.UTF_8 + " or windows-1252",
          "correct the name");
    }
  }

  private char delimiter(String text) {
    if (text.equals("tab")) {
      return '\t';
    }
    if (!List.of(",", ";", "\t").contains(text)) {
      throw wrong("delimiter", text, "\",\" or \";\" or \"tab\"", "choose one of these");
    }
    return text.charAt(0);
  }

  private char decimal(String path, String text) {
    if (!text.equals(".") && !text.equals(",")) {
      throw wrong(path, text, "\".\" or \",\"", "choose one of these");
    }
    return text.charAt(0);
  }

  private int seasonStart(JsonObject json) {
    if (!json.has("season_starts")) {
      return 1;
    }
    String text = text("season_starts", json.get("season_starts"));
    if (!text.matches("[1-9]|1[0-2]")) {
      throw wrong("season_starts", text, "a month from 1 to 12", "write 7 for July");
    }
    return Integer.parseInt(text);
  }

  private void requireUnit(String path, ColumnRule rule, String unit) {
    if (Unit.of(rule, unit).isEmpty()) {
      throw wrong(path, unit, Unit.choices(rule), "choose one of these or leave it out");
    }
  }
}
