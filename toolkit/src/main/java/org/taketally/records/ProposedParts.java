package org.taketally.records;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.SideBySide;
import org.taketally.records.problems.DictionaryEntry;

/** Proposes the parts of a sheet whose results stand side by side: seasons, or a tray. */
final class ProposedParts {

  private static final Pattern YEAR = Pattern.compile("(?<!\\d)((?:19|20)\\d{2}|[12]\\d)(?!\\d)");
  private static final String OF = "\\d+\\D+\\d+";
  private static final String TAKES = RecordColumn.TAKES.columnName();
  private static final String GRAFTS = RecordColumn.GRAFTS.columnName();
  private static final String OUTCOME = RecordColumn.OUTCOME.columnName();
  private static final List<String> NAMES =
      List.of(RecordColumn.ROOTSTOCK.columnName(), RecordColumn.CULTIVAR.columnName());
  private static final List<String> OTHERS =
      List.of(
          RecordColumn.GRAFTER.columnName(),
          RecordColumn.SITE.columnName(),
          RecordColumn.METHOD.columnName());

  private final ProposedSheet sheet;
  private final Map<String, String> headings;
  private final Set<String> used = new LinkedHashSet<>();
  private final Set<String> marks = new LinkedHashSet<>();

  ProposedParts(ProposedSheet sheet) {
    this.sheet = sheet;
    this.headings = sheet.headings();
  }

  /** Headings that stand in a part. */
  Set<String> used() {
    return used;
  }

  /** Those of them that hold marks. */
  Set<String> marks() {
    return marks;
  }

  private boolean resultKnown() {
    return headings.containsKey(TAKES) || headings.containsKey(OUTCOME);
  }

  /** A part for each season, where headings name the year; whether there are several. */
  boolean seasons() {
    Map<String, Map<String, String>> parts = new TreeMap<>();
    for (String heading : sheet.source().headings()) {
      Matcher year = YEAR.matcher(heading);
      if (!headings.containsValue(heading) && year.find()) {
        String season = year.group(1).length() == 2 ? "20" + year.group(1) : year.group(1);
        String name = means(heading, year.replaceFirst(" ").strip());
        if (!name.isEmpty()) {
          parts.computeIfAbsent(season, s -> new LinkedHashMap<>()).putIfAbsent(name, heading);
        }
      }
    }
    parts.values().removeIf(part -> !part.containsKey(TAKES) && !part.containsKey(OUTCOME));
    if (parts.size() < 2 || resultKnown()) {
      return false;
    }
    JsonArray wide = new JsonArray();
    parts.forEach((season, columns) -> wide.add(part("season", season, columns)));
    sheet.rules().add("wide", wide);
    sheet.because(
        "the results of %s stand side by side, a part for each season",
        String.join(", ", parts.keySet()));
    return true;
  }

  /** What a heading means once its year is taken off; empty if nothing we know. */
  private String means(String heading, String rest) {
    Set<String> means = CommonWords.columns(rest);
    String result = sheet.values(heading).result();
    if (rest.isEmpty() || means.contains(TAKES) || means.contains(OUTCOME)) {
      return result;
    }
    boolean made = means.contains(GRAFTS) || means.contains(RecordColumn.GRAFT_DATE.columnName());
    return made && result.equals(TAKES) ? GRAFTS : "";
  }

  private JsonObject part(String name, String value, Map<String, String> columns) {
    used.addAll(columns.values());
    Optional.ofNullable(columns.get(OUTCOME)).ifPresent(marks::add);
    return DictionaryEntry.part(name, value, columns);
  }

  /** Asks whose results stand side by side, where headings name them; whether it asked. */
  boolean sets() {
    List<String> others =
        sheet.source().headings().stream().filter(one -> !headings.containsValue(one)).toList();
    Map<String, Map<String, String>> sets = SideBySide.parts(others);
    if (resultKnown() || sets.isEmpty() || SideBySide.seasons(sets.keySet())) {
      return false;
    }
    sets.replaceAll((name, columns) -> byValues(columns));
    ask(sets);
    return true;
  }

  /** The same headings, those of results read as counts or as words by what stands below them. */
  private Map<String, String> byValues(Map<String, String> columns) {
    Map<String, String> read = new LinkedHashMap<>();
    columns.forEach(
        (ours, heading) ->
            read.put(ours.equals(GRAFTS) ? ours : sheet.values(heading).result(), heading));
    return read;
  }

  /** Asks what headings over results are, where they are names alone; whether it asked. */
  boolean tray() {
    Map<String, Map<String, String>> results = new LinkedHashMap<>();
    for (String heading : sheet.source().headings()) {
      if (!headings.containsValue(heading) && !heading.isEmpty()) {
        SheetValues values = sheet.values(heading);
        if (marks(values)) {
          results.put(heading, Map.of(OUTCOME, heading));
        } else if (values.all(OF)) {
          results.put(heading, Map.of(TAKES, heading));
        }
      }
    }
    boolean alike =
        results.values().stream().map(Map::keySet).distinct().count() == 1 && results.size() > 1;
    if (resultKnown() || !alike) {
      return false;
    }
    ask(results);
    return true;
  }

  private void ask(Map<String, Map<String, String>> results) {
    List<String> needed = NAMES.stream().filter(name -> !headings.containsKey(name)).toList();
    List<String> absent =
        Stream.concat(needed.stream(), OTHERS.stream().filter(name -> !headings.containsKey(name)))
            .toList();
    List<JsonArray> wide = new ArrayList<>();
    for (String name : absent) {
      JsonArray parts = new JsonArray();
      results.forEach((value, columns) -> parts.add(part(name, value, columns)));
      wide.add(parts);
    }
    String other =
        needed.isEmpty()
            ? ""
            : "; what then still lacks of %s goes under \"constants\", if all rows have the same"
                .formatted(String.join(" and ", needed));
    boolean alone = results.values().stream().noneMatch(columns -> columns.containsKey(GRAFTS));
    List<String> counted =
        results.values().stream().flatMap(columns -> columns.values().stream()).toList();
    String last = counted.get(counted.size() - 1);
    boolean times = alone && !counted.equals(List.copyOf(results.keySet()));
    OpenQuestion question =
        sheet.ask(
            "results of %s stand side by side, and each of these may be a %s; add \"wide\": %s, with"
                + " the column that fits in place of \"%s\"%s%s",
            String.join(", ", results.keySet()),
            String.join(" or a ", absent),
            wide.get(0),
            absent.get(0),
            other,
            times
                ? "; if they are counts of the same grafts at several times, add \"%s\" as takes"
                        .formatted(last)
                    + " instead"
                : "");
    for (int i = 0; i < absent.size(); i++) {
      question.choice("each is a " + absent.get(i), wide.get(i), "wide");
    }
    if (times) {
      question.choice(
          "counts of the same grafts; \"%s\" is the last of them".formatted(last),
          new JsonPrimitive(last),
          "columns",
          TAKES);
    }
    question.choice("something else", new JsonObject());
  }

  /** Whether a column holds nothing but marks. */
  private static boolean marks(SheetValues values) {
    return values.exact().isEmpty()
        && !values.counts().isEmpty()
        && values.counts().keySet().stream()
            .allMatch(text -> text.length() == 1 || CommonWords.isValue(OUTCOME, text))
        && values.counts().size() <= 6;
  }
}
