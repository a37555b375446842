package org.taketally.plan.order;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SourceFiles;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** A line of an order book or a list of requests, collecting everything wrong with it. */
final class ListLine {

  /** What a line below the others is called that sums them up. */
  private static final Set<String> SUMS =
      Set.of("total", "totals", "grandtotal", "sum", "summe", "gesamt", "insgesamt", "zusammen");

  private final String name;
  private final long number;
  private final List<String> headings;
  private final List<String> fields;
  private final List<Problem> problems = new ArrayList<>();

  private ListLine(String name, long number, List<String> headings, List<String> fields) {
    this.name = name;
    this.number = number;
    this.headings = headings;
    this.fields = fields;
  }

  /**
   * Which columns a list has.
   *
   * @param all it may have
   * @param needed of them
   */
  record Columns(List<String> all, List<String> needed) {}

  /**
   * A list as read.
   *
   * @param name of the list, for problems
   * @param lines none if the headings can't be used
   * @param problems what is wrong with the headings, and then with the lines
   */
  record Read(String name, List<ListLine> lines, List<Problem> problems) {

    /**
     * What the lines say; what is wrong with them is added to the problems.
     *
     * @param entry what a line says; empty if that can't be used
     * @param none the problem of a list without a line
     */
    <E> List<E> entries(Function<ListLine, Optional<E>> entry, Problem none) {
      List<E> entries = new ArrayList<>();
      for (ListLine line : lines) {
        line.requireHeadings();
        entry.apply(line).ifPresent(entries::add);
        problems.addAll(line.problems());
      }
      if (entries.isEmpty() && problems.isEmpty()) {
        problems.add(none);
      }
      return entries;
    }
  }

  /**
   * Reads a list.
   *
   * @param name of the list, for problems
   * @param text comma-separated, UTF-8
   */
  static Read read(String name, Reader text, Columns columns) throws IOException {
    List<ListLine> lines = new ArrayList<>();
    try (CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(text)) {
      for (NamedCsvRecord row : csv) {
        lines.add(
            new ListLine(name, row.getStartingLineNumber(), row.getHeader(), row.getFields()));
      }
    }
    return checked(name, lines, columns);
  }

  /**
   * Reads a list as sheets of records are read: CSV parted by commas, semicolons or tabs, or XLSX.
   *
   * @param file the list
   */
  static Read read(Path file, Columns columns) {
    String name = String.valueOf(file.getFileName());
    RowSource source = SourceFiles.list(file, heading -> columns.all().contains(plain(heading)));
    List<ListLine> lines = new ArrayList<>();
    try (RowSource.Rows rows = source.open()) {
      for (RawRow row = rows.next(); row != null; row = rows.next()) {
        lines.add(new ListLine(name, row.line(), source.headings(), List.of(row.fields())));
      }
    }
    return checked(name, lines, columns);
  }

  private static Read checked(String name, List<ListLine> lines, Columns columns) {
    List<Problem> problems = new ArrayList<>();
    if (!lines.isEmpty()) {
      lines.get(0).headings(columns, problems);
    }
    return new Read(name, problems.isEmpty() ? lines : List.of(), problems);
  }

  private void headings(Columns columns, List<Problem> wrong) {
    List<String> there = headings.stream().map(ListLine::plain).toList();
    for (String column : columns.needed()) {
      if (!there.contains(column)) {
        wrong.add(
            new Problem(
                Severity.ERROR,
                name,
                1,
                column,
                String.join(", ", headings),
                "a column named " + column,
                "name the column so; the others may be " + String.join(", ", columns.all())));
      }
    }
    for (String heading : headings) {
      if (!columns.all().contains(plain(heading))) {
        wrong.add(
            new Problem(
                Severity.ERROR,
                name,
                1,
                heading,
                heading,
                "one of " + String.join(", ", columns.all()),
                "rename or delete the column"));
      } else if (there.indexOf(plain(heading)) != there.lastIndexOf(plain(heading))) {
        wrong.add(
            new Problem(
                Severity.ERROR,
                name,
                1,
                heading,
                "the heading more than once",
                "each heading once",
                "rename or delete the others"));
        return;
      }
    }
  }

  /** A comma too many, as in 1,000, moves what follows under other headings or none. */
  private void requireHeadings() {
    int last = fields.size();
    while (last > 0 && fields.get(last - 1).isBlank()) {
      last--;
    }
    if (last > headings.size()) {
      problems.add(
          new Problem(
              Severity.ERROR,
              name,
              number,
              "",
              String.join(" | ", fields.subList(0, last)),
              "%d fields at most, one a heading".formatted(headings.size()),
              "write numbers without a comma, and put names that hold one in quotation marks"));
    }
  }

  private static String plain(String heading) {
    return heading.replace("\uFEFF", "").strip().toLowerCase(Locale.ROOT);
  }

  List<Problem> problems() {
    return problems;
  }

  String field(String column) {
    for (int i = 0; i < Math.min(headings.size(), fields.size()); i++) {
      if (plain(headings.get(i)).equals(column)) {
        return fields.get(i).strip();
      }
    }
    return "";
  }

  String cultivar(String remedy) {
    String cultivar = field("cultivar");
    if (cultivar.isEmpty()) {
      wrong("cultivar", "the name of a cultivar", remedy);
    } else if (SUMS.contains(NameLikeness.plain(cultivar))) {
      wrong(
          "cultivar",
          "the name of a cultivar, not of a sum",
          "delete the line: it would be counted once more");
    }
    return cultivar;
  }

  /** A whole number of 1 or more that must be there. */
  OptionalInt needed(String column, String remedy) {
    OptionalInt number = whole(column, 1);
    if (number.isEmpty() && field(column).isEmpty()) {
      wrong(column, "a whole number from 1 to 9,999,999", remedy);
    }
    return number;
  }

  OptionalInt whole(String column, int least) {
    String typed = field(column);
    if (typed.isEmpty()) {
      return OptionalInt.empty();
    }
    if (typed.matches("\\d{1,7}") && Integer.parseInt(typed) >= least) {
      return OptionalInt.of(Integer.parseInt(typed));
    }
    wrong(column, "a whole number from %d to 9,999,999".formatted(least), "correct it");
    return OptionalInt.empty();
  }

  /** Sticks there are of the line's cultivar, of which lines can't say different things. */
  OptionalInt sticks(String column, SharedSticks said) {
    OptionalInt own = whole(column, 0);
    if (own.isEmpty()) {
      return own;
    }
    String cultivar = field("cultivar");
    int before = said.left(cultivar).orElse(own.getAsInt());
    if (own.getAsInt() != before) {
      wrong(
          column,
          "%d, as an earlier line says of %s".formatted(before, cultivar),
          "write in each line of a cultivar all the sticks there are of it, or leave the others"
              + " empty: its lines share them");
    }
    said.there(cultivar, before);
    return own;
  }

  OptionalDouble percent(String column) {
    String typed = field(column).replace("%", "").strip();
    if (typed.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (typed.matches("\\d{1,3}([.,]\\d+)?")) {
      double share = Double.parseDouble(typed.replace(',', '.')) / 100;
      if (share >= 0.01 && share <= 1) {
        return OptionalDouble.of(share);
      }
    }
    wrong(
        column,
        "per cent from 1 to 100, e.g. 75",
        "correct it, or leave it empty to have it taken from records");
    return OptionalDouble.empty();
  }

  /** One of some words; empty if none is written. */
  Optional<String> word(String column, List<String> words) {
    String typed = field(column).toLowerCase(Locale.ROOT);
    if (typed.isEmpty() || words.contains(typed)) {
      return Optional.of(typed).filter(word -> !word.isEmpty());
    }
    wrong(column, "one of " + String.join(", ", words), "write it so, or leave it empty");
    return Optional.empty();
  }

  Optional<LocalDate> date(String column, String otherwise) {
    String typed = field(column);
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(typed));
    } catch (DateTimeParseException notADate) {
      wrong(column, "a date as year-month-day, e.g. 2027-04-15", "write it so, " + otherwise);
      return Optional.empty();
    }
  }

  void wrong(String column, String expected, String remedy) {
    problems.add(
        new Problem(Severity.ERROR, name, number, column, field(column), expected, remedy));
  }
}
