package org.taketally.plan.order;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.Reader;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** A line of an order book or a list of requests, collecting everything wrong with it. */
final class ListLine {

  private final String name;
  private final NamedCsvRecord row;
  private final List<Problem> problems = new ArrayList<>();

  private ListLine(String name, NamedCsvRecord row) {
    this.name = name;
    this.row = row;
  }

  /**
   * Reads a list.
   *
   * @param columns it may have
   * @param needed of them
   * @param problems where what is wrong with the headings goes; no line is read then
   */
  static List<ListLine> read(
      String name, Reader text, List<String> columns, List<String> needed, List<Problem> problems)
      throws IOException {
    List<ListLine> lines = new ArrayList<>();
    try (CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(text)) {
      for (NamedCsvRecord row : csv) {
        if (lines.isEmpty()) {
          headings(name, row, columns, needed, problems);
          if (!problems.isEmpty()) {
            break;
          }
        }
        lines.add(new ListLine(name, row));
      }
    }
    return lines;
  }

  private static void headings(
      String name,
      NamedCsvRecord row,
      List<String> columns,
      List<String> needed,
      List<Problem> problems) {
    List<String> there = row.getHeader().stream().map(ListLine::plain).toList();
    for (String column : needed) {
      if (!there.contains(column)) {
        problems.add(
            new Problem(
                Severity.ERROR,
                name,
                1,
                column,
                String.join(", ", row.getHeader()),
                "a column named " + column,
                "name the column so; the others may be " + String.join(", ", columns)));
      }
    }
    for (String heading : row.getHeader()) {
      if (!columns.contains(plain(heading))) {
        problems.add(
            new Problem(
                Severity.ERROR,
                name,
                1,
                heading,
                heading,
                "one of " + String.join(", ", columns),
                "rename or delete the column"));
      }
    }
  }

  private static String plain(String heading) {
    return heading.replace("\uFEFF", "").strip().toLowerCase(Locale.ROOT);
  }

  List<Problem> problems() {
    return problems;
  }

  String field(String column) {
    for (int i = 0; i < row.getHeader().size(); i++) {
      if (plain(row.getHeader().get(i)).equals(column) && i < row.getFieldCount()) {
        return row.getField(i).strip();
      }
    }
    return "";
  }

  String cultivar(String remedy) {
    String cultivar = field("cultivar");
    if (cultivar.isEmpty()) {
      wrong("cultivar", "the name of a cultivar", remedy);
    }
    return cultivar;
  }

  /** A whole number of 1 or more that must be there. */
  OptionalInt needed(String column, String remedy) {
    OptionalInt number = whole(column, 1);
    if (number.isEmpty() && field(column).isEmpty()) {
      wrong(column, "a whole number, 1 or more", remedy);
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
    wrong(column, "a whole number, %d or more".formatted(least), "correct it");
    return OptionalInt.empty();
  }

  OptionalDouble percent(String column) {
    String typed = field(column).replace("%", "").strip();
    if (typed.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (typed.matches("\\d{1,3}([.]\\d+)?")) {
      double share = Double.parseDouble(typed) / 100;
      if (share > 0 && share <= 1) {
        return OptionalDouble.of(share);
      }
    }
    wrong(
        column,
        "per cent above 0 and up to 100, e.g. 75",
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
        new Problem(
            Severity.ERROR,
            name,
            row.getStartingLineNumber(),
            column,
            field(column),
            expected,
            remedy));
  }
}
