package org.taketally.records.rows;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.DatePattern;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.Trim;

/**
 * A look over a whole sheet before it is read, at columns whose values can be told only from each
 * other: days written day first by one hand and month first by another, shares of takes among which
 * a 1 would pass for one graft, and counts of grafts among which a blank would.
 */
public final class SheetSurvey {

  /** What a column turned out to hold. */
  enum Doubt {
    /** Days that read only with day and month the other way round than said. */
    OTHER_ORDER,
    /** Days that read only as said. */
    SAID_ORDER,
    /** Days that read both ways, and differ. */
    BOTH_ORDERS,
    /** Shares of the grafts. */
    SHARES,
    /** Counts above 1. */
    COUNTS
  }

  private static final int REMEMBERED = 1 << 16;

  /** So few days the other way round are slips. */
  private static final int A_SLIP = 1;

  private static final double FEW = 0.05;

  private final Map<String, Map<Doubt, Example>> found = new LinkedHashMap<>();

  /**
   * The first value that shows it.
   *
   * @param line where it stands
   * @param text as typed
   * @param count how many show it
   */
  public record Example(long line, String text, long count) {}

  private SheetSurvey() {}

  /** What the columns of a sheet turn out to hold, from its first row to its last. */
  static SheetSurvey of(RowSource source, Headings headings, SheetRules rules) {
    SheetSurvey survey = new SheetSurvey();
    List<Look> looks = new ArrayList<>();
    for (Map.Entry<Integer, String> column : headings.meaning().entrySet()) {
      looks.addAll(daysLook(column.getKey(), column.getValue(), rules));
    }
    for (Map.Entry<Integer, String> column : headings.meaning().entrySet()) {
      looks.addAll(countsLooks(column.getKey(), column.getValue(), rules, source.semicolons()));
    }
    if (!looks.isEmpty()) {
      survey.look(source, looks);
    }
    return survey;
  }

  private static List<Look> daysLook(int field, String name, SheetRules rules) {
    Optional<DatePattern> said = rules.dates(name).flatMap(DatePattern::of);
    Optional<DatePattern> other = rules.dates(name).flatMap(DatePattern::otherOrder);
    boolean each =
        rules.datesBy().isPresent(); // each person's days are read by a pattern of their own
    if (each
        || KnownColumns.rule(name).kind() != ColumnKind.DATE
        || said.isEmpty()
        || other.isEmpty()) {
      return List.of();
    }
    return List.of(
        new Look(
            field, name, Doubt.OTHER_ORDER, (text, exact) -> only(other.get(), said.get(), text)),
        new Look(
            field, name, Doubt.SAID_ORDER, (text, exact) -> only(said.get(), other.get(), text)),
        new Look(
            field, name, Doubt.BOTH_ORDERS, (text, exact) -> both(said.get(), other.get(), text)));
  }

  private static boolean only(DatePattern one, DatePattern other, String text) {
    return one.read(text).isPresent() && other.read(text).isEmpty();
  }

  private static boolean both(DatePattern one, DatePattern other, String text) {
    Optional<LocalDate> day = one.read(text);
    return day.isPresent() && other.read(text).filter(d -> !d.equals(day.get())).isPresent();
  }

  private static List<Look> countsLooks(
      int field, String name, SheetRules rules, boolean semicolons) {
    boolean takes = name.equals(RecordColumn.TAKES.columnName());
    boolean mayBeShares = takes && rules.column(name).unit().isEmpty();
    if (!mayBeShares && !name.equals(RecordColumn.GRAFTS.columnName())) {
      return List.of();
    }
    NumberNotation notation = new NumberNotation(rules.decimal(name), semicolons);
    Look counts =
        new Look(field, name, Doubt.COUNTS, (text, exact) -> number(notation, text, exact) > 1);
    Look shares =
        new Look(
            field,
            name,
            Doubt.SHARES,
            (text, exact) -> {
              double number = number(notation, text, exact);
              return number > 0 && number < 1;
            });
    return takes ? List.of(shares, counts) : List.of(counts);
  }

  private static double number(NumberNotation notation, String text, boolean exact) {
    return (exact ? NumberNotation.exact(text) : notation.readCount(text)).orElse(Double.NaN);
  }

  private void look(RowSource source, List<Look> looks) {
    try (RowSource.Rows open = source.open()) {
      for (RawRow raw = open.next(); raw != null; raw = open.next()) {
        for (Look look : looks) {
          look(raw, look);
        }
      }
    }
  }

  private void look(RawRow raw, Look look) {
    if (look.field() >= raw.fields().length) {
      return;
    }
    Map<Doubt, Example> shown =
        found.computeIfAbsent(look.name(), name -> new EnumMap<>(Doubt.class));
    String text = Trim.trim(raw.fields()[look.field()]);
    if (!text.isEmpty() && look.shows(text, raw.exact(look.field()))) {
      shown.merge(
          look.doubt(),
          new Example(raw.line(), text, 1),
          (first, next) -> new Example(first.line(), first.text(), first.count() + 1));
    }
  }

  /** What to look for in a column; what a text shows is remembered, as most come often. */
  private record Look(int field, String name, Doubt doubt, Test test, Map<String, Boolean> known) {

    Look(int field, String name, Doubt doubt, Test test) {
      this(field, name, doubt, test, new HashMap<>());
    }

    boolean shows(String text, boolean exact) {
      if (exact || known.size() > REMEMBERED) {
        return test.test(text, exact);
      }
      return known.computeIfAbsent(text, t -> test.test(t, false));
    }
  }

  /** Whether a text, or a number of a typed cell, shows it. */
  private interface Test {
    boolean test(String text, boolean exact);
  }

  /** The first value of a column that shows it, if there is one. */
  Optional<Example> shown(String column, Doubt doubt) {
    return Optional.ofNullable(found.getOrDefault(column, Map.of()).get(doubt));
  }

  /** A day the other way round, if there are too many of them for slips. */
  Optional<Example> otherOrder(String column) {
    return shown(column, Doubt.OTHER_ORDER).filter(other -> !areSlips(column, other));
  }

  private boolean areSlips(String column, Example other) {
    long said = shown(column, Doubt.SAID_ORDER).map(Example::count).orElse(0L);
    return other.count() <= A_SLIP || other.count() < FEW * said;
  }

  /** Says of days the other way round that pass for slips what hangs on them. */
  public void slips(String file, Headings headings, ProblemLog log) {
    headings
        .meaning()
        .forEach(
            (field, name) -> {
              Optional<Example> other = shown(name, Doubt.OTHER_ORDER);
              Optional<Example> both = shown(name, Doubt.BOTH_ORDERS);
              if (other.isPresent() && both.isPresent() && areSlips(name, other.get())) {
                ProblemText words = slip(other.get(), both.get());
                log.add(
                    ProblemKind.DAYS_OF_TWO_ORDERS,
                    new Place(file, other.get().line()),
                    headings.heading(field),
                    () -> words);
              }
            });
  }

  private static ProblemText slip(Example other, Example both) {
    return new ProblemText(
        other.text(),
        "days written one way; this one reads only with day and month the other way round, %,d others (%s on line %,d is the first) read both ways and were read as the dictionary says"
            .formatted(both.count(), both.text(), both.line()),
        "correct it if it is a slip; if someone wrote these days the other way round, write them as"
            + " yyyy-MM-dd");
  }
}
