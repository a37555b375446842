package org.taketally.plan.order;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.TotalWords;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.rows.DateNotation;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SourceFiles;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** A line of an order book or a list of requests, collecting everything wrong with it. */
final class ListLine {

  private final Sheet sheet;
  private final long number;
  private final ListHeadings columns;
  private final List<String> fields;
  private final List<Problem> problems = new ArrayList<>();

  private ListLine(Sheet sheet, long number, ListHeadings columns, List<String> fields) {
    this.sheet = sheet;
    this.number = number;
    this.columns = columns;
    this.fields = fields;
  }

  /**
   * A list as read.
   *
   * @param name of the list, for problems
   * @param lines none if the headings can't be used
   * @param problems what is wrong with the headings, and then with the lines
   * @param headings how they were read
   */
  record Read(String name, List<ListLine> lines, List<Problem> problems, ListReading headings) {

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
  static Read read(String name, Reader text, ListHeadings.Columns columns) throws IOException {
    Map<Long, List<String>> rows = new LinkedHashMap<>();
    List<String> headings = new ArrayList<>();
    try (CsvReader<CsvRecord> csv = CsvReader.builder().ofCsvRecord(text)) {
      for (CsvRecord row : csv) {
        if (headings.isEmpty()) {
          row.getFields().forEach(field -> headings.add(field.replace("\uFEFF", "").strip()));
        } else {
          rows.put(row.getStartingLineNumber(), row.getFields());
        }
      }
    }
    SheetRules rules = SheetDictionary.none().rules(name);
    return checked(
        new Sheet(name, headings, new ListHeadings.Place(name, 1, 0), rules), rows, columns);
  }

  /**
   * Reads a list as sheets of records are read: CSV parted by commas, semicolons or tabs, or XLSX.
   *
   * @param file the list
   * @param dictionary says how it is written
   */
  static Read read(Path file, SheetDictionary dictionary, ListHeadings.Columns columns) {
    RowSource source =
        SourceFiles.list(file, dictionary, heading -> !columns.meant(heading).isEmpty());
    Map<Long, List<String>> read = new LinkedHashMap<>();
    try (RowSource.Rows rows = source.open()) {
      for (RawRow row = rows.next(); row != null; row = rows.next()) {
        read.put(row.line(), List.of(row.fields()));
      }
    }
    String name = String.valueOf(file.getFileName());
    SheetRules rules = dictionary.rules(source.name());
    ListHeadings.Place place =
        new ListHeadings.Place(name, rules.headingRow(), source.likelyHeadingRow());
    return checked(new Sheet(name, source.headings(), place, rules), read, columns);
  }

  /**
   * A list as it stands in its file.
   *
   * @param name of the list, for problems
   * @param headings its headings, stripped
   * @param place where they stand
   * @param rules of the dictionary
   */
  private record Sheet(
      String name, List<String> headings, ListHeadings.Place place, SheetRules rules) {}

  private static Read checked(
      Sheet sheet, Map<Long, List<String>> rows, ListHeadings.Columns columns) {
    ListHeadings found = new ListHeadings(sheet.name(), sheet.headings(), sheet.rules(), columns);
    List<Problem> problems =
        new ArrayList<>(found.problems(sheet.place(), sheet.headings(), sheet.rules()));
    List<ListLine> lines = new ArrayList<>();
    if (problems.isEmpty()) {
      rows.forEach((number, fields) -> lines.add(new ListLine(sheet, number, found, fields)));
    }
    return new Read(sheet.name(), lines, problems, found.reading());
  }

  /** A comma too many, as in 1,000, moves what follows under other headings or none. */
  private void requireHeadings() {
    int last = fields.size();
    while (last > 0 && fields.get(last - 1).isBlank()) {
      last--;
    }
    if (last > sheet.headings().size()) {
      problems.add(
          new Problem(
              Severity.ERROR,
              sheet.name(),
              number,
              "",
              String.join(" | ", fields.subList(0, last)),
              "%d fields at most, one a heading".formatted(sheet.headings().size()),
              "write numbers without a comma, and put names that hold one in quotation marks"));
    }
  }

  List<Problem> problems() {
    return problems;
  }

  /** The heading of a column as it stands in the list. */
  private String heading(String column) {
    return columns.field(column).map(sheet.headings()::get).orElse(column);
  }

  private String typed(String column) {
    return columns
        .field(column)
        .map(field -> field < fields.size() ? fields.get(field).strip() : "")
        .orElseGet(() -> sheet.rules().constants().getOrDefault(column, ""));
  }

  /** What a field says: as the dictionary has it, where it speaks of what was typed. */
  String field(String column) {
    String typed = typed(column);
    return sheet.rules().missing(column).contains(typed)
        ? ""
        : sheet.rules().column(column).same().getOrDefault(typed, typed);
  }

  String cultivar(String remedy) {
    String cultivar = field("cultivar");
    if (!isName(cultivar)) {
      wrong("cultivar", "the name of a cultivar", remedy);
    } else if (TotalWords.isSum(cultivar)) {
      wrong(
          "cultivar",
          "the name of a cultivar, not of a sum",
          "delete the line: it would be counted once more");
    }
    return cultivar;
  }

  /** A stock that only will do, or empty; a dash is no stock. */
  String rootstock() {
    String stock = field("rootstock");
    if (!stock.isEmpty() && !isName(stock)) {
      wrong("rootstock", "the name of a stock", "leave it empty, or write any, if any will do");
    }
    return stock;
  }

  private static boolean isName(String name) {
    return !NameLikeness.plain(name).isEmpty();
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

  /**
   * One of some words, or a common word for one in a column of records; empty if none is written.
   */
  Optional<String> word(String column, List<String> words, String like) {
    String typed = field(column).toLowerCase(Locale.ROOT);
    String word = words.contains(typed) ? typed : CommonWords.value(like, typed).orElse(typed);
    if (word.isEmpty() || words.contains(word)) {
      return Optional.of(word).filter(one -> !one.isEmpty());
    }
    wrong(column, "one of " + String.join(", ", words), "write it so, or leave it empty");
    return Optional.empty();
  }

  Optional<LocalDate> date(String column, String otherwise) {
    String typed = field(column);
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    DateNotation.Day read = DateNotation.day(typed, sheet.rules().dates(column));
    if (read.day().isEmpty()) {
      wrong(
          column,
          read.expected(),
          read.remedy().isEmpty()
              ? "write it so, e.g. 2027-04-15, " + otherwise
              : read.remedy() + " (--dictionary), or write the day as year-month-day");
    }
    return read.day();
  }

  void wrong(String column, String expected, String remedy) {
    problems.add(
        new Problem(
            Severity.ERROR,
            sheet.name(),
            number,
            heading(column),
            typed(column),
            expected,
            remedy));
  }
}
