package org.taketally.records.checks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.DictionaryEntry;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.Levels;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.terms.Plural;

/** Looks for names that may be one and the same, when all rows have been read. Merges none. */
final class NameChecks {

  /** Names compared with each other in one column; beyond, the reader says so. */
  private static final int COMPARED = 4000;

  private final RecordsLayout layout;
  private final PassRules.Sheets sheets;
  private final ProblemLog log;

  NameChecks(RecordsLayout layout, PassRules.Sheets sheets, ProblemLog log) {
    this.layout = layout;
    this.sheets = sheets;
    this.log = log;
  }

  void run() {
    for (RecordColumn column : RecordColumn.values()) {
      if (column.kind() == ColumnKind.LEVELS && !column.closed()) {
        new InColumn(column).check();
      }
    }
  }

  /** A name, and what it comes to when letters alone count. */
  private record Name(int code, String text, String plain, String digits) {

    static Name of(int code, String name) {
      return new Name(code, name, NameLikeness.plain(name), NameLikeness.digits(name));
    }

    boolean shortFor(Name other) {
      return text.endsWith(".") && NameLikeness.shortFor(text, other.text);
    }

    /** Nearly the same letters; names that differ in their digits are meant to differ. */
    boolean like(Name other) {
      int shorter = Math.min(plain.length(), other.plain.length());
      return digits.equals(other.digits)
          && shorter > digits.length() + 2
          && NameLikeness.similarity(plain, other.plain) >= NameLikeness.NEARLY_ALIKE;
    }
  }

  /** The names of one column. */
  private final class InColumn {
    private final RecordColumn column;
    private final Levels levels;
    private final Map<String, List<Name>> byDigits = new LinkedHashMap<>();

    InColumn(RecordColumn column) {
      this.column = column;
      this.levels = layout.track(column).levels();
    }

    void check() {
      int names = 0;
      for (int code = 0; code < levels.size(); code++) {
        if (levels.rows(code) > 0 && ++names <= COMPARED) {
          Name name = Name.of(code, levels.name(code));
          byDigits.computeIfAbsent(name.digits(), digits -> new ArrayList<>()).add(name);
        }
      }
      byDigits.values().forEach(this::compare);
      compareWithSpellings();
      if (names > COMPARED) {
        tooMany(names);
      }
    }

    private void compare(List<Name> names) {
      for (int i = 0; i < names.size(); i++) {
        for (int j = 0; j < i; j++) {
          Name one = names.get(i);
          Name other = names.get(j);
          if (one.plain().equals(other.plain())) {
            report(ProblemKind.SPELT_TWO_WAYS, one.code(), other.code());
          } else if (one.shortFor(other)) {
            report(ProblemKind.SIMILAR_NAMES, other.code(), one.code(), false);
          } else if (other.shortFor(one)) {
            report(ProblemKind.SIMILAR_NAMES, one.code(), other.code(), false);
          } else if (one.like(other)) {
            report(ProblemKind.SIMILAR_NAMES, one.code(), other.code());
          }
        }
      }
    }

    private void report(ProblemKind kind, int one, int other) {
      report(kind, one, other, levels.rows(one) <= levels.rows(other));
    }

    /** The name to be used is the full one, or else the commoner. */
    private void report(ProblemKind kind, int one, int other, boolean second) {
      int rarer = second ? one : other;
      int commoner = second ? other : one;
      String expected =
          "another name than \"%s\" (%s; this one %,d)"
              .formatted(
                  levels.name(commoner),
                  Plural.of(levels.rows(commoner), "row"),
                  levels.rows(rarer));
      add(kind, rarer, levels.name(commoner), expected);
    }

    /** A slip in a spelling that the dictionary turns into another name. */
    private void compareWithSpellings() {
      sheets
          .spellings(column)
          .forEach(
              (spelling, meant) -> {
                Name name = Name.of(0, spelling);
                for (Name other : byDigits.getOrDefault(name.digits(), List.of())) {
                  if (name.like(other) && !levels.name(other.code()).equals(meant)) {
                    String expected =
                        "another name than \"%s\", which means %s".formatted(spelling, meant);
                    add(ProblemKind.SIMILAR_NAMES, other.code(), meant, expected);
                  }
                }
              });
    }

    private void add(ProblemKind kind, int code, String meant, String expected) {
      String name = levels.name(code);
      log.add(
          kind,
          levels.first(code),
          sheets.heading(levels.first(code).file(), column),
          () ->
              new ProblemText(
                  name,
                  expected,
                  "if they are one, say so in the dictionary: \"%s\": {%s}"
                      .formatted(column.columnName(), DictionaryEntry.same(meant, name))));
    }

    private void tooMany(int names) {
      log.add(
          ProblemKind.NAMES_NOT_COMPARED,
          Place.whole("all files"),
          column.columnName(),
          () ->
              new ProblemText(
                  "%,d names".formatted(names),
                  "",
                  "only the first %,d were compared with each other".formatted(COMPARED)));
    }
  }
}
