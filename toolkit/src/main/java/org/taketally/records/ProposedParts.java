package org.taketally.records;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.RecordColumn;

/** Proposes the parts of a sheet whose results stand side by side: seasons, or a tray. */
final class ProposedParts {

  private static final Pattern YEAR = Pattern.compile("(?<!\\d)((?:19|20)\\d{2}|[12]\\d)(?!\\d)");
  private static final String OF = "\\d+\\D+\\d+";
  private static final String TAKES = RecordColumn.TAKES.columnName();
  private static final String GRAFTS = RecordColumn.GRAFTS.columnName();
  private static final String OUTCOME = RecordColumn.OUTCOME.columnName();
  private static final List<String> NAMES =
      List.of(RecordColumn.ROOTSTOCK.columnName(), RecordColumn.CULTIVAR.columnName());

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
    JsonObject set = new JsonObject();
    set.addProperty(name, value);
    JsonObject from = new JsonObject();
    columns.forEach(
        (ours, heading) -> {
          from.addProperty(ours, heading);
          used.add(heading);
          if (ours.equals(OUTCOME)) {
            marks.add(heading);
          }
        });
    JsonObject part = new JsonObject();
    part.add("set", set);
    part.add("columns", from);
    return part;
  }

  /** Asks whether headings over results are stocks or cultivars; whether it asked. */
  boolean tray() {
    List<String> missing = NAMES.stream().filter(name -> !headings.containsKey(name)).toList();
    Map<String, String> results = new LinkedHashMap<>();
    for (String heading : sheet.source().headings()) {
      if (!headings.containsValue(heading) && !heading.isEmpty()) {
        SheetValues values = sheet.values(heading);
        if (marks(values)) {
          results.put(heading, OUTCOME);
        } else if (values.all(OF)) {
          results.put(heading, TAKES);
        }
      }
    }
    if (resultKnown()
        || missing.isEmpty()
        || results.size() < 2
        || Set.copyOf(results.values()).size() > 1) {
      return false;
    }
    ask(missing, results);
    return true;
  }

  private void ask(List<String> missing, Map<String, String> results) {
    List<JsonArray> wide = new ArrayList<>();
    for (String name : missing) {
      JsonArray parts = new JsonArray();
      results.forEach((heading, ours) -> parts.add(part(name, heading, Map.of(ours, heading))));
      wide.add(parts);
    }
    String other =
        missing.size() == 1
            ? ""
            : "; add the other of the two under \"constants\", if all rows have the same";
    OpenQuestion question =
        sheet.ask(
            "results stand under %s, which may each be a %s; add \"wide\": %s%s",
            String.join(", ", results.keySet()),
            String.join(" or a ", missing),
            wide.get(0),
            other);
    for (int i = 0; i < missing.size(); i++) {
      question.choice("each heading is a " + missing.get(i), wide.get(i), "wide");
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
