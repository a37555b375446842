package org.taketally.records.dictionary;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.text.similarity.LevenshteinDistance;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.Unit;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Turns the JSON of a dictionary into rules, or says what is wrong with it. */
final class DictionaryParser {

  private static final Set<String> SHEET_KEYS =
      Set.of(
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
          "batches",
          "files");
  private static final Set<String> COLUMN_KEYS =
      Set.of("about", "from", "unit", "dates", "decimal", "missing", "same", "levels");
  private static final int TYPO = 2;
  private static final String WIDE_EXAMPLE =
      "write e.g. [{\"set\": {\"season\": \"2024\"}, \"columns\": {\"takes\": \"alive 24\"}}]";

  private final String file;

  DictionaryParser(String file) {
    this.file = file;
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
        headingRow(json),
        wide(json));
  }

  private int headingRow(JsonObject json) {
    String text = json.has("heading_row") ? text("heading_row", json.get("heading_row")) : "1";
    if (!text.matches("[1-9]\\d{0,5}")) {
      throw wrong(
          "heading_row", text, "the number of a line, from 1", "write 4 for the fourth line");
    }
    return Integer.parseInt(text);
  }

  private List<WidePart> wide(JsonObject json) {
    List<WidePart> parts = new ArrayList<>();
    if (!json.has("wide")) {
      return parts;
    }
    if (!json.get("wide").isJsonArray()) {
      throw wrong("wide", json.get("wide").toString(), "a list in brackets [ ]", WIDE_EXAMPLE);
    }
    for (JsonElement one : json.get("wide").getAsJsonArray()) {
      parts.add(widePart("wide[" + parts.size() + "]", requireObject("wide", one)));
    }
    return parts;
  }

  private WidePart widePart(String path, JsonObject json) {
    requireKeys(path + ".", json, Set.of("set", "columns"));
    Map<String, String> set = texts(path + ".set", object(path + ".", json, "set"));
    Map<String, String> columns = texts(path + ".columns", object(path + ".", json, "columns"));
    if (columns.isEmpty()) {
      throw wrong(path, json.toString(), "columns that hold its values", WIDE_EXAMPLE);
    }
    return new WidePart(set, columns);
  }

  private Map<String, String> texts(String path, JsonObject json) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (Map.Entry<String, JsonElement> one : json.entrySet()) {
      texts.put(requireKnown(one.getKey()), text(path + "." + one.getKey(), one.getValue()));
    }
    return texts;
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
        "\"unassessed\" or \"failed\"",
        "write failed where only takes were written down, unassessed where nobody looked");
  }

  private ColumnEntry entry(String name, JsonElement value) {
    String path = "columns." + name;
    requireOurNameFirst(path, name, value);
    if (value.isJsonPrimitive()) {
      ColumnEntry none = ColumnEntry.NONE;
      return new ColumnEntry(
          Optional.of(text(path, value)),
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
    ColumnKind kind = KnownColumns.rule(name).kind();
    boolean number = kind == ColumnKind.NUMBER || kind == ColumnKind.COUNT;
    Map<String, Boolean> useless = new LinkedHashMap<>();
    useless.put("dates", kind != ColumnKind.DATE);
    useless.put("decimal", ours && !number);
    useless.put("same", ours && kind != ColumnKind.LEVELS);
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

  private void requireMeaning(String path, String name, String spelling, Set<String> missing) {
    if (spelling.isEmpty()) {
      boolean result = path.contains("." + RecordColumn.OUTCOME.columnName() + ".");
      throw wrong(
          path,
          "a blank as a spelling of " + name,
          "words that stand in the sheet",
          result
              ? "say what a blank result means with \"blank_result\": \"failed\" or \"unassessed\""
                  + " beside columns"
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

  private void requirePattern(String path, String pattern) {
    if (DatePattern.of(pattern).isEmpty()) {
      throw wrong(
          path,
          pattern,
          "a pattern of d, M and y such as dd/MM/yyyy, or \"day-number\"",
          "dd or d is the day, MM or M the month, yyyy the year");
    }
  }

  private void requireUnit(String path, ColumnRule rule, String unit) {
    if (Unit.of(rule, unit).isEmpty()) {
      throw wrong(path, unit, Unit.choices(rule), "choose one of these or leave it out");
    }
  }

  /** Refuses a slip of the pen for one of our columns; other names are columns of the user. */
  private String requireKnown(String name) {
    if (KnownColumns.isKnown(name)) {
      return name;
    }
    for (String known : KnownColumns.names()) {
      if (LevenshteinDistance.getDefaultInstance().apply(known, name) <= TYPO) {
        throw wrong(
            "columns", name, "a name of ours or of your own", "did you mean " + known + "?");
      }
    }
    return name;
  }

  private void requireKeys(String path, JsonObject json, Set<String> known) {
    for (String key : json.keySet()) {
      if (!known.contains(key)) {
        List<String> sorted = known.stream().sorted().toList();
        String like =
            NameLikeness.nearest(key, sorted).map(n -> "; did you mean " + n + "?").orElse("");
        throw wrong(path + key, key, "one of " + sorted, "correct the name" + like);
      }
    }
  }

  private JsonObject object(String path, JsonObject json, String key) {
    return json.has(key) ? requireObject(path + key, json.get(key)) : new JsonObject();
  }

  JsonObject requireObject(String path, JsonElement value) {
    if (!value.isJsonObject()) {
      throw wrong(path, value.toString(), "braces { }", "put names and values in braces");
    }
    return value.getAsJsonObject();
  }

  private Optional<String> string(String path, JsonObject json, String key) {
    return json.has(key) ? Optional.of(text(path + key, json.get(key))) : Optional.empty();
  }

  private String text(String path, JsonElement value) {
    if (!value.isJsonPrimitive()) {
      throw wrong(path, value.toString(), "a text in quotes", "put it in quotes");
    }
    return value.getAsString();
  }

  private Optional<Set<String>> strings(String path, JsonObject json, String key) {
    return json.has(key) ? Optional.of(list(path + key, json.get(key))) : Optional.empty();
  }

  private Set<String> list(String path, JsonElement value) {
    if (!value.isJsonArray()) {
      throw wrong(path, value.toString(), "a list in brackets [ ]", "put the texts in brackets");
    }
    List<String> texts = new ArrayList<>();
    value.getAsJsonArray().forEach(one -> texts.add(text(path, one).strip()));
    return new LinkedHashSet<>(texts);
  }

  RecordsUnreadable wrong(String path, String found, String expected, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, file, 0, path, found, expected, remedy));
  }
}
