package org.taketally.records;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.DictionaryEntry;
import org.taketally.terms.Plural;

/** The entries proposed for the columns of one sheet, from the values that stand in them. */
final class ProposedColumns {

  private static final String DEAD = CommonWords.DEAD;
  private static final String TAKES = RecordColumn.TAKES.columnName();
  private static final String OUTCOME = RecordColumn.OUTCOME.columnName();
  private static final List<String> NAMES =
      List.of(RecordColumn.CULTIVAR.columnName(), RecordColumn.ROOTSTOCK.columnName());
  private static final String BOTH_NAMES =
      "\\p{L}[^/+×]*(\\s*[/+×]\\s*|\\s+(x|on|auf|sur|sobre|su|/)\\s+)\\p{L}[^/+×]*";
  private static final double MANY_BLANKS = 0.1;

  private final ProposedSheet sheet;
  private final Map<String, String> headings;
  private final ProposedSpellings spellings;
  private final ProposedDays days;
  private final ProposedNumbers numbers;
  private final ProposedNames names;
  private final Set<String> asked = new LinkedHashSet<>();
  private final Map<String, JsonObject> entries = new LinkedHashMap<>();
  private boolean onlyFailures;

  ProposedColumns(ProposedSheet sheet) {
    this.sheet = sheet;
    this.headings = sheet.headings();
    this.spellings = new ProposedSpellings(sheet);
    this.days = new ProposedDays(sheet);
    this.numbers = new ProposedNumbers(sheet);
    this.names = new ProposedNames(sheet);
  }

  /** Adds the entries to the rules of the sheet. */
  void propose() {
    ProposedShape shape = new ProposedShape(sheet);
    asked.addAll(shape.ask());
    marks(shape.marks());
    Optional<String> dead = Optional.ofNullable(headings.remove(DEAD));
    Optional.ofNullable(headings.get(TAKES)).or(() -> dead).ifPresent(this::oneResult);
    Set<String> parts = sideBySide();
    headings.forEach(this::column);
    dead.ifPresent(this::dead);
    own(parts);
    numbers.decimal();
    blanks();
    batches();
    absent();
    JsonObject columns = new JsonObject();
    entries.forEach((name, entry) -> columns.add(name, brief(entry)));
    if (!columns.isEmpty()) {
      sheet.rules().add("columns", columns);
    }
  }

  private void column(String name, String heading) {
    JsonObject entry = new JsonObject();
    if (!NameLikeness.plain(name).equals(NameLikeness.plain(heading))) {
      entry.addProperty("from", heading);
    }
    RecordColumn.named(name)
        .ifPresent(
            column -> {
              values(column, heading, entry);
              names.ask(column, heading);
            });
    if (!entry.isEmpty()) {
      entries.put(name, entry);
    }
  }

  private void values(RecordColumn column, String heading, JsonObject entry) {
    if (column.closed()) {
      spellings.propose(column, heading, sheet.values(heading), entry);
    } else if (column.kind() == ColumnKind.DATE && !asked.contains(column.columnName())) {
      days.propose(column, heading, entry);
    } else if (column.kind() == ColumnKind.NUMBER || column.kind() == ColumnKind.COUNT) {
      numbers.propose(column, heading, entry);
    }
  }

  /** Headings of results that stand side by side; what the marks under them mean. */
  private Set<String> sideBySide() {
    ProposedParts parts = new ProposedParts(sheet);
    if (!asked.contains(TAKES) && (parts.seasons() || parts.sets() || parts.tray())) {
      asked.add(TAKES);
      if (!sheet.rules().has("wide")) {
        asked.addAll(NAMES); // the question asks for them too
      }
    }
    marks(parts.marks());
    return parts.used();
  }

  /** What marks mean that stand under several headings. */
  private void marks(Set<String> marked) {
    if (!marked.isEmpty()) {
      JsonObject outcome = new JsonObject();
      spellings.propose(
          RecordColumn.OUTCOME, String.join(", ", marked), sheet.values(marked), outcome);
      if (!outcome.isEmpty()) {
        entries.put(OUTCOME, outcome);
      }
    }
  }

  /** Counts beside words for the same rows: only one of the two can be the result. */
  private void oneResult(String counts) {
    String words = headings.get(OUTCOME);
    boolean counted = sheet.values(counts).result().equals(TAKES);
    if (words == null || !counted || bothFilled(counts, words) == 0) {
      return;
    }
    headings.remove(OUTCOME);
    JsonObject columns = new JsonObject();
    columns.add(TAKES, JsonNull.INSTANCE);
    columns.addProperty(OUTCOME, words);
    sheet
        .ask(
            "\"%s\" counts and \"%s\" says a result in words, in %,d rows both; only one of the two"
                + " can be the result: the counts are proposed, and the words kept as a column of"
                + " your own; if the words are the result, take takes out and add \"outcome\": %s",
            counts, words, bothFilled(counts, words), DictionaryEntry.quoted(words))
        .choice("the counts", new JsonObject())
        .choice("the words", columns, "columns");
  }

  /** Rows with something under both headings. */
  private long bothFilled(String one, String other) {
    return filled(Set.of(one)) + filled(Set.of(other)) - filled(Set.of(one, other));
  }

  private long filled(Set<String> together) {
    SheetValues values = sheet.values(together);
    return values.rows() - values.blanks();
  }

  /** A column of the dead: beside the living, beside the grafts, or alone. */
  private void dead(String heading) {
    boolean grafts = headings.containsKey(RecordColumn.GRAFTS.columnName());
    boolean counted = sheet.values(heading).result().equals(TAKES);
    boolean takes = headings.containsKey(TAKES);
    boolean outcome = headings.containsKey(OUTCOME);
    if (counted && (takes || grafts)) {
      entry(TAKES).addProperty(DEAD, heading);
      asked.add(TAKES);
      sheet.because(
          "\"%s\" seems to count the dead, so that %s",
          heading,
          takes && grafts
              ? "the living and the dead are held against the grafts"
              : takes ? "grafts are both together" : "takes are the grafts less the dead");
      if (!takes) {
        living(heading);
      }
    } else if (!counted && outcome) {
      entry(OUTCOME).addProperty(DEAD, heading);
      sheet.because("\"%s\" seems to mark the dead", heading);
    } else if (!counted && !takes) {
      marked(heading);
    }
  }

  /** Asks whether another column counts the living: else what wasn't seen would be a take. */
  private void living(String dead) {
    List<String> counts =
        sheet.source().headings().stream()
            .filter(heading -> !heading.isEmpty() && !heading.equals(dead))
            .filter(heading -> !headings.containsValue(heading) && !CommonWords.isBatch(heading))
            .filter(heading -> sheet.values(heading).holdsCounts())
            .toList();
    if (counts.isEmpty()) {
      return;
    }
    OpenQuestion question =
        sheet.ask(
            "does \"%s\" count the living? Then add \"from\" to takes, beside \"dead\"; else takes"
                + " are the grafts less the dead, and grafts nobody saw count as takes",
            String.join("\" or \"", counts));
    counts.forEach(
        heading ->
            question.choice(
                "\"%s\" counts the living".formatted(heading),
                new JsonPrimitive(heading),
                "columns",
                TAKES,
                "from"));
    question.choice("none: what isn't dead is alive", new JsonObject());
  }

  private JsonObject entry(String name) {
    return entries.computeIfAbsent(name, n -> new JsonObject());
  }

  /** Only the dead were marked: the marks are failures. */
  private void marked(String heading) {
    JsonObject same = new JsonObject();
    same.add("failed", OpenQuestion.list(sheet.values(heading).counts().keySet()));
    JsonObject entry = entry(OUTCOME);
    entry.addProperty("from", heading);
    entry.add("same", same);
    headings.put(OUTCOME, heading);
    onlyFailures = true;
    sheet.because("\"%s\" seems to mark failures alone", heading);
  }

  /** Columns of the user's own: their numbers are read too. */
  private void own(Set<String> parts) {
    String known =
        sheet.rules() + " " + entries + sheet.questions().stream().map(OpenQuestion::text).toList();
    List<String> own =
        sheet.source().headings().stream()
            .filter(heading -> !heading.isEmpty() && !headings.containsValue(heading))
            .filter(heading -> !parts.contains(heading) && !CommonWords.isBatch(heading))
            .filter(heading -> !known.contains("\"" + heading + "\""))
            .toList();
    own.forEach(numbers::seeOwn);
    List<String> kept = own.stream().filter(heading -> !isOurs(heading)).toList();
    if (!kept.isEmpty()) {
      sheet.because("columns of your own, kept as they are: \"%s\"", String.join("\", \"", kept));
    }
  }

  /** Whether a heading is one of our names, those of columns made from others included. */
  private static boolean isOurs(String heading) {
    String plain = heading.toLowerCase(Locale.ROOT);
    return KnownColumns.isKnown(plain) || KnownColumns.isWorkedOut(plain);
  }

  /** An entry that only names a heading is written as that heading. */
  private static JsonElement brief(JsonObject entry) {
    return entry.size() == 1 && entry.has("from")
        ? new JsonPrimitive(entry.get("from").getAsString())
        : entry;
  }

  private void blanks() {
    for (RecordColumn column : new RecordColumn[] {RecordColumn.TAKES, RecordColumn.OUTCOME}) {
      String heading = headings.get(column.columnName());
      if (heading != null) {
        SheetValues values = results(column.columnName(), heading);
        if (values.blanks() == values.rows()) {
          sheet.ask(
              "%s under \"%s\", all blank: a colour, a drawn mark or a crossed-out line"
                  + " isn't read; write the results into the cells and have the sheet proposed again",
              Plural.of(values.rows(), "result"), heading);
        } else if (values.blanks() > MANY_BLANKS * values.rows()) {
          String meant = onlyFailures ? "taken" : "failed";
          String written = onlyFailures ? "failures" : "takes";
          sheet
              .ask(
                  "%,d of %,d results under \"%s\" are blank; add \"blank_result\": \"%s\" if only"
                      + " %s were written down, \"unassessed\" if nobody looked",
                  values.blanks(), values.rows(), heading, meant, written)
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
    return sheet.values(
        entry.has(DEAD) ? Set.of(heading, entry.get(DEAD).getAsString()) : Set.of(heading));
  }

  private void batches() {
    JsonArray batches = new JsonArray();
    for (String heading : sheet.source().headings()) {
      if (!headings.containsValue(heading) && CommonWords.isBatch(heading)) {
        batches.add(heading);
        sheet.because("\"%s\" seems to group grafts treated together", heading);
      }
    }
    if (!batches.isEmpty()) {
      sheet.rules().add("batches", batches);
    }
  }

  private void absent() {
    boolean result =
        headings.containsKey(TAKES) || headings.containsKey(OUTCOME) || asked.contains(TAKES);
    bothNames();
    for (String needed : NAMES) {
      if (!headings.containsKey(needed) && !asked.contains(needed)) {
        lacks(needed, needed);
      }
    }
    if (!result) {
      lacks("takes or outcome", "takes", "outcome");
    } else if (needsGrafts()) {
      lacks("how many grafts the takes are out of", "grafts");
    }
  }

  /** Asks of a column that seems to hold cultivar and rootstock both. */
  private void bothNames() {
    if (NAMES.stream().anyMatch(name -> headings.containsKey(name) || asked.contains(name))) {
      return;
    }
    sheet.source().headings().stream()
        .filter(heading -> !heading.isEmpty() && !headings.containsValue(heading))
        .filter(heading -> sheet.values(heading).mostly(BOTH_NAMES))
        .findFirst()
        .ifPresent(
            heading ->
                sheet.ask(
                    "\"%s\" seems to hold cultivar and rootstock in one cell (%s); make two columns"
                        + " of it and have the sheet proposed again",
                    heading, sheet.values(heading).counts().keySet().iterator().next()));
  }

  /** Whether takes are counts or percentages of a number of grafts that stands nowhere. */
  private boolean needsGrafts() {
    String takes = headings.get(TAKES);
    return takes != null
        && !asked.contains(TAKES)
        && !headings.containsKey(RecordColumn.GRAFTS.columnName())
        && sheet.values(takes).outOfUnknown();
  }

  private void lacks(String needed, String... names) {
    OpenQuestion question =
        sheet.ask(
            "no heading seems to hold %s (headings: %s); add it under \"columns\" or \"constants\"",
            needed, String.join(", ", sheet.source().headings()));
    for (String heading : sheet.source().headings()) {
      if (!headings.containsValue(heading) && !heading.isEmpty()) {
        for (String name : names) {
          question.choice(
              "\"%s\" is %s".formatted(heading, name), new JsonPrimitive(heading), "columns", name);
        }
      }
    }
  }
}
