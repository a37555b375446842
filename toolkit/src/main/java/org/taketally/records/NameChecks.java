package org.taketally.records;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Looks for names that may be one and the same, when all rows have been read. Merges none. */
final class NameChecks {

  private static final int COMPARED = 4000;

  private final RecordsLayout layout;
  private final PassRules.HeadingOf headings;
  private final ProblemLog log;

  /**
   * Checks of names.
   *
   * @param headings how columns are spelt in each file
   */
  NameChecks(RecordsLayout layout, PassRules.HeadingOf headings, ProblemLog log) {
    this.layout = layout;
    this.headings = headings;
    this.log = log;
  }

  void run() {
    for (RecordColumn column : RecordColumn.values()) {
      if (column.kind() == ColumnKind.LEVELS && !column.closed()) {
        check(column, layout.track(column).levels());
      }
    }
  }

  private record Name(int code, String plain, String digits) {}

  private void check(RecordColumn column, Levels levels) {
    Map<String, List<Name>> byDigits = new LinkedHashMap<>();
    int compared = 0;
    for (int code = 0; code < levels.size() && compared <= COMPARED; code++) {
      if (levels.rows(code) > 0 && ++compared <= COMPARED) {
        String digits = NameLikeness.digits(levels.name(code));
        byDigits
            .computeIfAbsent(digits, d -> new ArrayList<>())
            .add(new Name(code, NameLikeness.plain(levels.name(code)), digits));
      }
    }
    if (compared > COMPARED) {
      tooMany(column, levels);
    }
    byDigits.values().forEach(names -> compare(column, levels, names));
  }

  private void tooMany(RecordColumn column, Levels levels) {
    log.add(
        ProblemKind.NAMES_NOT_COMPARED,
        Place.whole("all files"),
        column.columnName(),
        () ->
            new Wording(
                "%,d names".formatted(levels.size()),
                "",
                "only the first %,d were compared with each other".formatted(COMPARED)));
  }

  private void compare(RecordColumn column, Levels levels, List<Name> names) {
    for (int i = 0; i < names.size(); i++) {
      for (int j = 0; j < i; j++) {
        Name one = names.get(i);
        Name other = names.get(j);
        if (one.plain().equals(other.plain())) {
          report(ProblemKind.SPELT_TWO_WAYS, column, levels, new int[] {one.code(), other.code()});
        } else if (alike(one, other)) {
          report(ProblemKind.SIMILAR_NAMES, column, levels, new int[] {one.code(), other.code()});
        }
      }
    }
  }

  private static boolean alike(Name one, Name other) {
    int shorter = Math.min(one.plain().length(), other.plain().length());
    boolean tellTale = shorter > one.digits().length() + 2;
    return tellTale
        && NameLikeness.similarity(one.plain(), other.plain()) >= NameLikeness.NEARLY_ALIKE;
  }

  private void report(ProblemKind kind, RecordColumn column, Levels levels, int[] pair) {
    boolean swap = levels.rows(pair[0]) > levels.rows(pair[1]);
    int rarer = swap ? pair[1] : pair[0];
    int commoner = swap ? pair[0] : pair[1];
    log.add(
        kind,
        levels.first(rarer),
        headings.heading(levels.first(rarer).file(), column),
        () -> words(levels, rarer, commoner, column));
  }

  private static Wording words(Levels levels, int rarer, int commoner, RecordColumn column) {
    String name = levels.name(rarer);
    String other = levels.name(commoner);
    return new Wording(
        name,
        "another name than \"%s\" (%,d rows; this one %,d)"
            .formatted(other, levels.rows(commoner), levels.rows(rarer)),
        "if they are one, say so in the dictionary: \"%s\": {\"same\": {\"%s\": [\"%s\"]}}"
            .formatted(column.columnName(), other, name));
  }
}
