package org.taketally.records;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.DatePattern;
import org.taketally.records.sources.RowSource;

/** The entries proposed for the columns of one sheet, from the values that stand in them. */
final class ProposedColumns {

  private static final String NUMBER = "-?\\d+(\\.\\d+)?";
  private static final String COMMA = "-?\\d+,\\d{1,2}";
  private static final String POINT = "-?\\d+\\.\\d+";
  private static final String DEAD = "dead";
  private static final String TAKES = RecordColumn.TAKES.columnName();
  private static final List<String> NAMES =
      List.of(RecordColumn.CULTIVAR.columnName(), RecordColumn.ROOTSTOCK.columnName());
  private static final List<String> ORDERS = List.of("d%1$sM%1$syyyy", "M%1$sd%1$syyyy");
  private static final List<String> SHORT_YEARS = List.of("d%1$sM%1$syy", "M%1$sd%1$syy");
  private static final List<String> IN_WORDS =
      List.of("d MMM yyyy", "d. MMM yyyy", "d-MMM-yyyy", "d-MMM-yy", "d MMM yy", "MMM d, yyyy");
  private static final double NEARLY_ALL = 0.9;
  private static final double MANY_BLANKS = 0.1;

  private final RowSource source;
  private final Map<String, String> headings;
  private final List<String> reasons;
  private final List<OpenQuestion> questions;
  private JsonObject rules = new JsonObject();
  private final Set<String> asked = new LinkedHashSet<>();
  private final Map<String, JsonObject> entries = new LinkedHashMap<>();
  private long commas;
  private long points;
  private boolean onlyFailures;

  ProposedColumns(
      RowSource source,
      Map<String, String> headings,
      List<String> reasons,
      List<OpenQuestion> questions) {
    this.source = source;
    this.headings = headings;
    this.reasons = reasons;
    this.questions = questions;
  }

  void addTo(JsonObject sheet) {
    rules = sheet;
    asked.addAll(new ProposedShape(source, headings, questions, rules).ask());
    Optional<String> dead = Optional.ofNullable(headings.remove(DEAD));
    Set<String> parts = sideBySide();
    ProposedNames names = new ProposedNames(source, rules, questions);
    headings.forEach(
        (name, heading) -> {
          JsonObject entry = new JsonObject();
          if (!NameLikeness.plain(name).equals(NameLikeness.plain(heading))) {
            entry.addProperty("from", heading);
          }
          Optional<RecordColumn> column = RecordColumn.named(name);
          column.ifPresent(c -> values(c, heading, entry));
          column.ifPresent(c -> names.ask(c, heading));
          if (!entry.isEmpty()) {
            entries.put(name, entry);
          }
        });
    dead.ifPresent(this::dead);
    own(parts);
    decimal();
    blanks();
    batches();
    absent();
    JsonObject columns = new JsonObject();
    entries.forEach((name, entry) -> columns.add(name, brief(entry)));
    if (!columns.isEmpty()) {
      rules.add("columns", columns);
    }
  }

  /** Headings of results that stand side by side; what the marks under them mean. */
  private Set<String> sideBySide() {
    ProposedParts parts = new ProposedParts(source, headings, rules);
    if (!asked.contains(TAKES) && (parts.seasons(reasons) || parts.tray(questions))) {
      asked.add(TAKES);
      if (!rules.has("wide")) {
        asked.addAll(NAMES); // the question asks for them too
      }
    }
    if (!parts.marks().isEmpty()) {
      JsonObject outcome = new JsonObject();
      SheetValues values = SheetValues.of(source, parts.marks());
      spellings(RecordColumn.OUTCOME, String.join(", ", parts.marks()), values, outcome);
      if (!outcome.isEmpty()) {
        entries.put(RecordColumn.OUTCOME.columnName(), outcome);
      }
    }
    return parts.used();
  }

  /** A column of the dead: beside the living, beside the grafts, or alone. */
  private void dead(String heading) {
    boolean grafts = headings.containsKey(RecordColumn.GRAFTS.columnName());
    boolean counted = SheetValues.of(source, heading).result().equals(TAKES);
    boolean takes = headings.containsKey(TAKES);
    boolean outcome = headings.containsKey(RecordColumn.OUTCOME.columnName());
    if (counted && takes != grafts) {
      entry(TAKES).addProperty(DEAD, heading);
      asked.add(TAKES);
      reasons.add(
          "%s: \"%s\" seems to count the dead, so that %s"
              .formatted(
                  source.name(),
                  heading,
                  takes ? "grafts are both together" : "takes are the grafts less the dead"));
    } else if (!counted && outcome) {
      entry(RecordColumn.OUTCOME.columnName()).addProperty(DEAD, heading);
      reasons.add("%s: \"%s\" seems to mark the dead".formatted(source.name(), heading));
    } else if (!counted && !takes) {
      marked(heading);
    }
  }

  private JsonObject entry(String name) {
    return entries.computeIfAbsent(name, n -> new JsonObject());
  }

  /** Only the dead were marked: the marks are failures. */
  private void marked(String heading) {
    JsonObject same = new JsonObject();
    same.add("failed", array(SheetValues.of(source, heading).counts().keySet()));
    JsonObject entry = entry(RecordColumn.OUTCOME.columnName());
    entry.addProperty("from", heading);
    entry.add("same", same);
    headings.put(RecordColumn.OUTCOME.columnName(), heading);
    onlyFailures = true;
    reasons.add("%s: \"%s\" seems to mark failures alone".formatted(source.name(), heading));
  }

  /** Columns of the user's own: their numbers are read too. */
  private void own(Set<String> parts) {
    String known = rules + " " + entries + questions.stream().map(OpenQuestion::sentence).toList();
    List<String> own =
        source.headings().stream()
            .filter(heading -> !heading.isEmpty() && !headings.containsValue(heading))
            .filter(heading -> !parts.contains(heading) && !CommonWords.isBatch(heading))
            .filter(heading -> !known.contains("\"" + heading + "\""))
            .toList();
    for (String heading : own) {
      SheetValues values = SheetValues.of(source, heading);
      if (values.mostly("-?\\d+([.,]\\d+)?")) {
        commas += values.count(COMMA);
        points += values.count(POINT);
      }
    }
    if (!own.isEmpty()) {
      reasons.add(
          "%s: columns of your own, kept as they are: \"%s\""
              .formatted(source.name(), String.join("\", \"", own)));
    }
  }

  /** An entry that only names a heading is written as that heading. */
  private static JsonElement brief(JsonObject entry) {
    return entry.size() == 1 && entry.has("from")
        ? new JsonPrimitive(entry.get("from").getAsString())
        : entry;
  }

  private void values(RecordColumn column, String heading, JsonObject entry) {
    SheetValues values = SheetValues.of(source, heading);
    if (column.closed()) {
      spellings(column, heading, values, entry);
    } else if (column.kind() == ColumnKind.DATE && !asked.contains(column.columnName())) {
      days(column, heading, values, entry);
    } else if (column.kind() == ColumnKind.NUMBER || column.kind() == ColumnKind.COUNT) {
      commas += values.count(COMMA);
      points += values.count(POINT);
      unit(column, heading, values, entry);
    }
  }

  private void spellings(
      RecordColumn column, String heading, SheetValues values, JsonObject entry) {
    Map<String, Set<String>> same = new LinkedHashMap<>();
    values
        .counts()
        .forEach(
            (text, count) -> {
              String plain = NameLikeness.plain(text);
              boolean ours =
                  column.allowed().stream().anyMatch(a -> NameLikeness.plain(a).equals(plain));
              if (!ours) {
                Optional<String> means = CommonWords.value(column.columnName(), text);
                means.ifPresentOrElse(
                    meant -> same.computeIfAbsent(meant, m -> new LinkedHashSet<>()).add(text),
                    () -> ask(column, heading, text, count));
              }
            });
    if (!same.isEmpty()) {
      JsonObject json = new JsonObject();
      same.forEach((meant, texts) -> json.add(meant, array(texts)));
      entry.add("same", json);
      reasons.add(
          "%s: words under \"%s\" are common ones for %s"
              .formatted(source.name(), heading, String.join(", ", same.keySet())));
    }
  }

  private static JsonArray array(Iterable<String> texts) {
    JsonArray array = new JsonArray();
    texts.forEach(array::add);
    return array;
  }

  /** Adds a question whose choices follow. */
  private OpenQuestion ask(String sentence) {
    OpenQuestion question = new OpenQuestion(sentence, rules);
    questions.add(question);
    return question;
  }

  private void ask(RecordColumn column, String heading, String text, int count) {
    OpenQuestion question =
        ask(
            "%s: \"%s\" stands under \"%s\" %s and may mean %s; add it under \"same\" of %s"
                .formatted(
                    source.name(),
                    text,
                    heading,
                    OpenQuestion.times(count),
                    String.join(" or ", column.allowed()),
                    column.columnName()));
    for (String meant : column.allowed()) {
      question.choice(
          words(column, meant),
          OpenQuestion.list(text),
          "columns",
          column.columnName(),
          "same",
          meant);
    }
  }

  private static String words(RecordColumn column, String meant) {
    return column != RecordColumn.OUTCOME
        ? meant
        : switch (meant) {
          case "taken" -> "taken: it took; a later loss isn't counted";
          case "failed" -> "failed: not alive when it was counted last";
          default -> meant + ": nobody can say";
        };
  }

  /** The patterns in which every day of the column can be read. */
  private void days(RecordColumn column, String heading, SheetValues values, JsonObject entry) {
    Set<String> texts =
        values.counts().keySet().stream()
            .filter(text -> !text.matches("\\d{4}-\\d{2}-\\d{2}.*"))
            .collect(Collectors.toCollection(LinkedHashSet::new));
    if (texts.isEmpty()) {
      return;
    }
    Map<String, Long> fit = new LinkedHashMap<>();
    for (String separator : List.of(".", "/", "-", " ")) {
      for (List<String> orders : List.of(ORDERS, SHORT_YEARS)) {
        for (String order : orders) {
          String pattern = order.formatted(separator);
          long read = texts.stream().filter(text -> reads(pattern, text)).count();
          if (read > 0) {
            fit.put(pattern, read);
          }
        }
      }
    }
    for (String pattern :
        texts.stream().noneMatch(t -> t.matches(".*\\p{L}{3}.*")) ? List.<String>of() : IN_WORDS) {
      long read = texts.stream().filter(text -> reads(pattern, text)).count();
      if (read > 0) {
        fit.put(pattern, read);
      }
    }
    Optional<String> best =
        fit.keySet().stream()
            .max(Comparator.comparingLong(fit::get))
            .filter(b -> isClear(b, fit, texts));
    if (best.isPresent()) {
      entry.addProperty("dates", best.get());
      reasons.add(
          "%s: %,d of %,d days under \"%s\" read as %s"
              .formatted(source.name(), fit.get(best.get()), texts.size(), heading, best.get()));
    } else {
      OpenQuestion question =
          ask(
              "%s: days under \"%s\" (such as %s) %s; add \"dates\" to that column"
                  .formatted(
                      source.name(), heading, texts.iterator().next(), readings(fit, texts)));
      fit.forEach(
          (pattern, read) ->
              question.choice(
                  "%s (%,d of %,d)".formatted(pattern, read, texts.size()),
                  new JsonPrimitive(pattern),
                  "columns",
                  column.columnName(),
                  "dates"));
    }
  }

  /** Whether a pattern reads nearly all days and every other reads fewer. */
  private static boolean isClear(String pattern, Map<String, Long> fit, Set<String> texts) {
    return fit.get(pattern) >= NEARLY_ALL * texts.size()
        && fit.entrySet().stream()
            .allMatch(o -> o.getKey().equals(pattern) || o.getValue() < fit.get(pattern));
  }

  private static boolean reads(String pattern, String text) {
    return DatePattern.of(pattern).flatMap(p -> p.read(text)).isPresent();
  }

  private static String readings(Map<String, Long> fit, Set<String> texts) {
    return fit.isEmpty()
        ? "read in no pattern tried"
        : fit.entrySet().stream()
            .map(
                one ->
                    "%,d of %,d read as %s".formatted(one.getValue(), texts.size(), one.getKey()))
            .collect(Collectors.joining(", "));
  }

  private void unit(RecordColumn column, String heading, SheetValues values, JsonObject entry) {
    String words = " " + heading.toLowerCase(Locale.ROOT).replaceAll("[^a-z°%\"]+", " ") + " ";
    String unit = null;
    if (column == RecordColumn.STORAGE_TEMP_C && words.matches(".* (°?f|fahrenheit) .*")) {
      unit = "F";
    } else if (column.unit().equals("mm") && words.matches(".* (in|inch|inches) .*")) {
      unit = "inch";
    } else if (column.unit().equals("mm") && words.matches(".* cm .*")) {
      unit = "cm";
    } else if (column == RecordColumn.TAKES && (values.mostly(".*%") || words.contains("%"))) {
      unit = "percent";
    } else if (column == RecordColumn.TAKES
        && values.mostly("0[.,]\\d+|[01]")
        && values.any("0[.,]\\d+")) {
      unit = "share";
    }
    if (unit != null) {
      entry.addProperty("unit", unit);
      reasons.add("%s: \"%s\" seems to be in %s".formatted(source.name(), heading, unit));
    } else if (column == RecordColumn.STORAGE_TEMP_C
        && values.all(NUMBER)
        && values.counts().keySet().stream().allMatch(t -> Double.parseDouble(t) > 30)) {
      ask("%s: every number under \"%s\" is above 30: add \"unit\": \"F\" if it is Fahrenheit"
              .formatted(source.name(), heading))
          .choice("Fahrenheit", new JsonPrimitive("F"), "columns", column.columnName(), "unit")
          .choice("Celsius", new JsonObject());
    }
  }

  private void decimal() {
    if (commas > 0 && points <= (1 - NEARLY_ALL) * commas) {
      rules.addProperty("decimal", ",");
      reasons.add(
          "%s: %,d numbers have decimal commas, %,d a point"
              .formatted(source.name(), commas, points));
    } else if (commas > 0 && points > 0) {
      ask("%s: numbers stand with decimal commas and with points; add \"decimal\" to single columns"
              .formatted(source.name()))
          .choice("commas in all of them", new JsonPrimitive(","), "decimal")
          .choice("points in all of them", new JsonPrimitive("."), "decimal");
    }
  }

  private void blanks() {
    for (RecordColumn column : new RecordColumn[] {RecordColumn.TAKES, RecordColumn.OUTCOME}) {
      String heading = headings.get(column.columnName());
      if (heading != null) {
        SheetValues values = results(column.columnName(), heading);
        if (values.blanks() > MANY_BLANKS * values.rows()) {
          String meant = onlyFailures ? "taken" : "failed";
          String written = onlyFailures ? "failures" : "takes";
          ask("%s: %,d of %,d results under \"%s\" are blank; add \"blank_result\": \"%s\" if only %s were written down, \"unassessed\" if nobody looked"
                  .formatted(
                      source.name(), values.blanks(), values.rows(), heading, meant, written))
              .choice(
                  "%s: only %s were written down".formatted(meant, written),
                  new JsonPrimitive(meant),
                  "blank_result")
              .choice("unassessed: nobody looked", new JsonPrimitive("unassessed"), "blank_result");
        }
      }
    }
  }

  /** Blank only where a mark in the column of the dead isn't the result. */
  private SheetValues results(String name, String heading) {
    JsonObject entry = entries.getOrDefault(name, new JsonObject());
    return SheetValues.of(
        source, entry.has(DEAD) ? Set.of(heading, entry.get(DEAD).getAsString()) : Set.of(heading));
  }

  private void batches() {
    JsonArray batches = new JsonArray();
    for (String heading : source.headings()) {
      if (!headings.containsValue(heading) && CommonWords.isBatch(heading)) {
        batches.add(heading);
        reasons.add(
            "%s: \"%s\" seems to group grafts treated together".formatted(source.name(), heading));
      }
    }
    if (!batches.isEmpty()) {
      rules.add("batches", batches);
    }
  }

  private void absent() {
    boolean result =
        headings.containsKey(TAKES)
            || headings.containsKey(RecordColumn.OUTCOME.columnName())
            || asked.contains(TAKES);
    for (String needed : NAMES) {
      if (!headings.containsKey(needed) && !asked.contains(needed)) {
        lacks(needed, needed);
      }
    }
    if (!result) {
      lacks("takes or outcome", "takes", "outcome");
    }
  }

  private void lacks(String needed, String... names) {
    OpenQuestion question =
        ask(
            "%s: no heading seems to hold %s (headings: %s); add it under \"columns\" or \"constants\""
                .formatted(source.name(), needed, String.join(", ", source.headings())));
    for (String heading : source.headings()) {
      if (!headings.containsValue(heading) && !heading.isEmpty()) {
        for (String name : names) {
          question.choice(
              "\"%s\" is %s".formatted(heading, name), new JsonPrimitive(heading), "columns", name);
        }
      }
    }
  }
}
