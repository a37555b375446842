package org.taketally.plan.order;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.rows.Headings;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * Which heading of a list is which column: as in records by the dictionary and our names, and
 * beyond that by words of other languages that mean one column only.
 */
final class ListHeadings {

  /** Columns that are called in a list what they are called in records. */
  private static final Set<String> AS_IN_RECORDS =
      Set.of(
          RecordColumn.CULTIVAR.columnName(),
          RecordColumn.ROOTSTOCK.columnName(),
          RecordColumn.BUD_STAGE.columnName());

  private final Columns columns;
  private final Map<String, Integer> fields = new LinkedHashMap<>();
  private final Map<String, String> meant = new LinkedHashMap<>();
  private final Map<String, Set<String>> unread = new LinkedHashMap<>();

  /**
   * Which columns a list has.
   *
   * @param list what it is called among the common words
   * @param all it may have
   * @param needed of them
   */
  record Columns(String list, List<String> all, List<String> needed) {

    /** Columns a heading may hold, by our names and the common words. */
    Set<String> meant(String heading) {
      String plain = NameLikeness.plain(heading);
      List<String> own = all.stream().filter(c -> NameLikeness.plain(c).equals(plain)).toList();
      if (!own.isEmpty()) {
        return Set.copyOf(own);
      }
      Set<String> common = CommonWords.columnsOf(list, heading);
      boolean listed = CommonWords.speaksOf(list, heading);
      return common.stream()
          .filter(c -> all.contains(c) && (listed || AS_IN_RECORDS.contains(c)))
          .collect(Collectors.toSet());
    }
  }

  /**
   * Understands the headings of a list.
   *
   * @param name of the list
   * @param headings as they stand there
   * @param rules of the dictionary
   * @param columns it may have
   * @throws org.taketally.records.problems.RecordsUnreadable if two headings hold one column
   */
  ListHeadings(String name, List<String> headings, SheetRules rules, Columns columns) {
    this.columns = columns;
    new Headings(name, headings, rules, columns.all(), Set.of())
        .meaning()
        .forEach(
            (field, column) -> {
              if (columns.all().contains(column)) {
                fields.put(column, field);
              } else {
                unread.put(headings.get(field), new HashSet<>(columns.meant(headings.get(field))));
              }
            });
    unread.values().forEach(candidates -> candidates.removeAll(fields.keySet()));
    List.copyOf(unread.keySet()).forEach(heading -> mean(heading, headings.indexOf(heading)));
  }

  /** Reads a heading by its meaning, where no other may mean the same. */
  private void mean(String heading, int field) {
    Set<String> candidates = unread.get(heading);
    if (candidates.size() == 1) {
      String column = candidates.iterator().next();
      if (unread.values().stream().filter(others -> others.contains(column)).count() == 1
          && !meant.containsValue(column)) {
        fields.put(column, field);
        meant.put(heading, column);
      }
    }
  }

  /** The field of a column. */
  Optional<Integer> field(String column) {
    return Optional.ofNullable(fields.get(column));
  }

  /** What isn't plain from the headings themselves. */
  ListReading reading() {
    List<String> not = new ArrayList<>(unread.keySet());
    not.removeAll(meant.keySet());
    return new ListReading(meant, not);
  }

  /**
   * What keeps the headings from being used.
   *
   * @param place where they stand
   * @param headings as they stand there
   * @param rules of the dictionary
   */
  List<Problem> problems(Place place, List<String> headings, SheetRules rules) {
    List<String> absent =
        columns.needed().stream()
            .filter(c -> !fields.containsKey(c) && !rules.constants().containsKey(c))
            .toList();
    if (!absent.isEmpty()) {
      return List.of(absent(place, absent, headings));
    }
    List<Problem> slips = new ArrayList<>();
    for (String heading : reading().notRead()) {
      columns.all().stream()
          .filter(c -> !fields.containsKey(c) && NameLikeness.mayBeOne(heading, c))
          .findFirst()
          .ifPresent(
              column ->
                  slips.add(
                      place.wrong(
                          heading,
                          heading,
                          "a heading of ours or one of your own",
                          "did you mean %s? Then write it so; else call the column otherwise"
                              .formatted(column))));
    }
    return slips;
  }

  private Problem absent(Place place, List<String> absent, List<String> headings) {
    String known =
        columns.all().stream()
            .filter(fields::containsKey)
            .map(column -> "%s (\"%s\")".formatted(column, headings.get(fields.get(column))))
            .collect(Collectors.joining(", "));
    String entries =
        absent.stream()
            .map(column -> "\"%s\": \"%s\"".formatted(column, candidate(column)))
            .collect(Collectors.joining(", "));
    return place.wrong(
        "",
        String.join(", ", headings),
        (absent.size() == 1 ? "a column " : "columns ")
            + String.join(" and ", absent)
            + (known.isEmpty() ? "" : " beside " + known),
        place.above() > 1 && place.above() != place.line()
            ? "headings seem to stand in line %d: delete the lines above, or say \"heading_row\": %d in a dictionary (--dictionary)"
                .formatted(place.above(), place.above())
            : "name the heading so, or say in a dictionary (--dictionary) which it is, e.g. \"columns\": {%s}"
                .formatted(entries));
  }

  /** The heading that may hold a column, by its meaning or its letters. */
  private String candidate(String column) {
    List<String> open = reading().notRead();
    return open.stream()
        .filter(heading -> unread.get(heading).contains(column))
        .findFirst()
        .or(() -> NameLikeness.nearest(column, open))
        .or(() -> CommonWords.nearest(columns.list(), column, open))
        .or(() -> open.size() == 1 ? Optional.of(open.get(0)) : Optional.empty())
        .orElse("your heading");
  }

  /**
   * Where headings stand.
   *
   * @param file their list
   * @param line of the headings
   * @param above the line that looks more like them; 0 if there is none
   */
  record Place(String file, long line, long above) {

    private Problem wrong(String column, String found, String expected, String remedy) {
      return new Problem(Severity.ERROR, file, line, column, found, expected, remedy);
    }
  }
}
