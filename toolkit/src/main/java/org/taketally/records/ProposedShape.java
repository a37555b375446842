package org.taketally.records;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.DittoMarks;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.SideBySide;
import org.taketally.records.problems.DictionaryEntry;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.Trim;

/**
 * Asks what the layout of a sheet leaves open: names written once, days by person, counting days.
 */
final class ProposedShape {

  private static final int ROWS = 20_000;
  private static final int SEVERAL = 2;

  /** Share of blanks from which a column seems to be written once for several rows. */
  private static final double OFTEN = 0.25;

  /** What may be the same in rows one below the other. */
  private static final Set<ColumnKind> SHARED = Set.of(ColumnKind.LEVELS, ColumnKind.DATE);

  private static final List<RecordColumn> OFTEN_ONCE =
      List.of(
          RecordColumn.SITE,
          RecordColumn.BLOCK,
          RecordColumn.GRAFTER,
          RecordColumn.METHOD,
          RecordColumn.GRAFT_DATE);

  private final ProposedSheet sheet;
  private final RowSource source;
  private final Map<String, String> headings;
  private final Set<String> marks = new LinkedHashSet<>();

  ProposedShape(ProposedSheet sheet) {
    this.sheet = sheet;
    this.source = sheet.source();
    this.headings = sheet.headings();
  }

  /** Asks; gives the columns that need no further question. */
  Set<String> ask() {
    Set<String> asked = new LinkedHashSet<>();
    Set<String> marked = dittoMarks();
    writtenOnce(marked);
    othersOnce(marked);
    byPerson(asked);
    countingDays(asked);
    calendarDays(asked);
    return asked;
  }

  /** Ditto marks where names belong; gives the headings they stand under. */
  private Set<String> dittoMarks() {
    Set<String> marked = new LinkedHashSet<>();
    Set<String> marks = new LinkedHashSet<>();
    for (Map.Entry<String, String> one : headings.entrySet()) {
      if (RecordColumn.named(one.getKey()).filter(c -> SHARED.contains(c.kind())).isPresent()) {
        for (String text : sheet.values(one.getValue()).counts().keySet()) {
          if (DittoMarks.isDitto(text)) {
            marked.add(one.getValue());
            marks.add(text);
          }
        }
      }
    }
    if (!marked.isEmpty()) {
      String list = OpenQuestion.list(marked).toString();
      sheet
          .ask(
              "ditto marks (%s) stand under %s; add \"fill_down\": %s if they, and blanks there,"
                  + " mean the same as above",
              String.join(" ", marks), String.join(", ", marked), list)
          .choice("the same as above", OpenQuestion.list(marked), "fill_down")
          .choice("names of their own, to be written out", new JsonObject());
    }
    return marked;
  }

  /** Names with blanks below them, where the sheet has results in those rows. */
  private void writtenOnce(Set<String> asked) {
    List<String> filled = new ArrayList<>();
    long blanks = 0;
    for (RecordColumn column : List.of(RecordColumn.CULTIVAR, RecordColumn.ROOTSTOCK)) {
      String heading = headings.get(column.columnName());
      if (heading != null && !asked.contains(heading)) {
        SheetValues values = sheet.values(heading);
        if (values.blanks() > 0 && !values.all().isEmpty()) {
          filled.add(heading);
          blanks = Math.max(blanks, values.blanks());
        }
      }
    }
    if (blanks < SEVERAL) {
      return; // a name forgotten, or a line of totals
    }
    String names = "\"" + String.join("\", \"", filled) + "\"";
    sheet
        .ask(
            "up to %,d rows have nothing under %s; add \"fill_down\": [%s] if a blank there means"
                + " the same as above (a merged cell, a name written once)",
            blanks, names, names)
        .choice("the same as above", OpenQuestion.list(filled), "fill_down")
        .choice("not recorded", new JsonObject());
  }

  /** What else may be written once for several rows, and would read as not recorded below. */
  private void othersOnce(Set<String> asked) {
    List<String> once = new ArrayList<>();
    long blanks = 0;
    for (RecordColumn column : OFTEN_ONCE) {
      String heading = headings.get(column.columnName());
      if (heading != null && !asked.contains(heading)) {
        SheetValues values = sheet.values(heading);
        boolean often = values.blanks() >= Math.max(SEVERAL, OFTEN * values.rows());
        if (often && !values.all().isEmpty()) {
          once.add(heading);
          blanks = Math.max(blanks, values.blanks());
        }
      }
    }
    if (!once.isEmpty()) {
      String names = "\"" + String.join("\", \"", once) + "\"";
      sheet
          .ask(
              "up to %,d rows have nothing under %s, which reads as not recorded; add \"fill_down\":"
                  + " [%s] (beside what stands there already) if a blank there means the same as"
                  + " above",
              blanks, names, names)
          .choice("the same as above", OpenQuestion.list(once), "fill_down")
          .choice("not recorded", new JsonObject());
    }
  }

  /** Days that read one way with one person and the other way with another. */
  private void byPerson(Set<String> asked) {
    String who = headings.get(RecordColumn.GRAFTER.columnName());
    for (RecordColumn column : RecordColumn.values()) {
      String days = headings.get(column.columnName());
      if (who != null && days != null && column.columnName().endsWith("_date")) {
        Map<String, String> patterns = patterns(texts(who, days));
        if (Set.copyOf(patterns.values()).size() > 1) {
          JsonObject by = new JsonObject();
          by.addProperty("column", who);
          JsonObject each = new JsonObject();
          patterns.forEach(each::addProperty);
          by.add("patterns", each);
          sheet
              .ask(
                  "days under \"%s\" read differently by person: %s; add \"dates_by\": %s",
                  days, patterns, by)
              .choice("each as said here", by, "dates_by");
          asked.add(column.columnName());
          return;
        }
      }
    }
  }

  private Map<String, Set<String>> texts(String who, String days) {
    int person = source.headings().indexOf(who);
    int day = source.headings().indexOf(days);
    Map<String, Set<String>> texts = new LinkedHashMap<>();
    try (RowSource.Rows rows = source.open()) {
      long read = 0;
      for (RawRow raw = rows.next(); raw != null && read < ROWS; raw = rows.next()) {
        read++;
        if (Math.max(person, day) < raw.fields().length && !raw.exact(day)) {
          String name = Trim.trim(raw.fields()[person]);
          String text = Trim.trim(raw.fields()[day]);
          if (!name.isEmpty() && !text.isEmpty()) {
            texts.computeIfAbsent(name, n -> new LinkedHashSet<>()).add(text);
          }
        }
      }
    }
    return texts;
  }

  /** The one pattern that reads all days of a person, for those who have just one. */
  private static Map<String, String> patterns(Map<String, Set<String>> texts) {
    Map<String, String> patterns = new LinkedHashMap<>();
    texts.forEach(
        (name, days) -> {
          List<String> fit =
              ProposedDays.inNumbers()
                  .filter(
                      pattern -> days.stream().allMatch(day -> ProposedDays.reads(pattern, day)))
                  .toList();
          if (fit.size() == 1) {
            patterns.put(name, fit.get(0));
          }
        });
    return patterns;
  }

  /** Headings such as "alive 30 d" and "alive 90 d". */
  private void countingDays(Set<String> asked) {
    Map<Integer, String> days = new TreeMap<>();
    SideBySide.countingDays(source.headings())
        .forEach(
            (day, heading) -> {
              if (isCounted(heading) || isMarked(heading)) {
                days.put(day, heading);
              }
            });
    if (days.size() < 2) {
      return;
    }
    days.values().stream().filter(heading -> !isCounted(heading)).forEach(marks::add);
    asked.add(RecordColumn.TAKES.columnName());
    JsonArray counts = DictionaryEntry.counts(days);
    sheet
        .ask(
            "%s look like counts at stated days after grafting; add \"counts\": %s",
            days.values(), counts)
        .choice("counts of the same grafts, the last one is the result", counts, "counts")
        .choice("something else", new JsonObject());
  }

  /** Headings such as "alive 15/04/2025" and "alive 15/06/2025". */
  private void calendarDays(Set<String> asked) {
    List<String> days = new ArrayList<>(SideBySide.calendarDays(source.headings()));
    if (days.isEmpty() || headings.containsKey(RecordColumn.TAKES.columnName())) {
      return;
    }
    asked.add(RecordColumn.TAKES.columnName());
    OpenQuestion question =
        sheet.ask(
            "\"%s\" look like counts of the same grafts on several days; add the last one under"
                + " \"columns\" as takes; to tell early take from late loss, give all of them in a"
                + " second file with a row for each count (record, assessed_date, alive) and name"
                + " it with --assessments",
            String.join("\", \"", days));
    Collections.reverse(days);
    for (String heading : days) {
      question.choice(
          "\"%s\" holds the takes".formatted(heading),
          new JsonPrimitive(heading),
          "columns",
          RecordColumn.TAKES.columnName());
    }
  }

  private boolean isCounted(String heading) {
    return sheet.values(heading).result().equals(RecordColumn.TAKES.columnName());
  }

  /** Whether most rows have a common word or mark for an outcome. */
  private boolean isMarked(String heading) {
    SheetValues values = sheet.values(heading);
    long known =
        values.counts().entrySet().stream()
            .filter(text -> CommonWords.isValue(RecordColumn.OUTCOME.columnName(), text.getKey()))
            .mapToLong(Map.Entry::getValue)
            .sum();
    return 2 * known > values.rows() - values.blanks();
  }

  /** Headings of counts at stated days that hold marks; empty before {@link #ask}. */
  Set<String> marks() {
    return marks;
  }
}
