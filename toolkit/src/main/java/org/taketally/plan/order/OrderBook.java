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

/**
 * An order book: CSV with the columns {@code cultivar} and {@code trees}, and where they are known
 * {@code rootstock} (empty or {@code any} if any will do), {@code due}, {@code take} (per cent),
 * {@code grafts} and {@code sticks} (what there is, to be told what it gives).
 *
 * @param entries one a line
 * @param problems lines that can't be used, with what to do; the book is complete only if there are
 *     none
 */
public record OrderBook(List<Entry> entries, List<Problem> problems) {

  private static final List<String> COLUMNS =
      List.of("cultivar", "rootstock", "trees", "due", "take", "grafts", "sticks");

  public OrderBook {
    entries = List.copyOf(entries);
    problems = List.copyOf(problems);
  }

  /**
   * A line of the book.
   *
   * @param line what is ordered
   * @param take stated share of grafts that take, above 0 and at most 1; empty if not stated
   * @param grafts grafts there can be at most; empty if not said
   * @param sticks sticks there are; empty if not said
   */
  public record Entry(
      OrderLine line, OptionalDouble take, OptionalInt grafts, OptionalInt sticks) {}

  /**
   * Reads a book.
   *
   * @param name of the file, for problems
   * @param text the file
   * @return the book
   * @throws IOException if it can't be read
   */
  public static OrderBook read(String name, Reader text) throws IOException {
    List<Entry> entries = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    try (CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(text)) {
      boolean first = true;
      for (NamedCsvRecord row : csv) {
        if (first && !headings(name, row, problems)) {
          break;
        }
        first = false;
        LineReader line = new LineReader(name, row);
        line.entry().ifPresent(entries::add);
        problems.addAll(line.problems());
      }
    }
    if (entries.isEmpty() && problems.isEmpty()) {
      problems.add(
          new Problem(
              Severity.ERROR,
              name,
              0,
              "",
              "no line",
              "a heading line (cultivar, rootstock, trees, due) and one line an order",
              "write the order book and read it again"));
    }
    return new OrderBook(entries, problems);
  }

  private static boolean headings(String name, NamedCsvRecord row, List<Problem> problems) {
    List<String> there = row.getHeader().stream().map(OrderBook::plain).toList();
    for (String needed : List.of("cultivar", "trees")) {
      if (!there.contains(needed)) {
        problems.add(
            new Problem(
                Severity.ERROR,
                name,
                1,
                needed,
                String.join(", ", row.getHeader()),
                "a column named " + needed,
                "name the column so; the others may be " + String.join(", ", COLUMNS)));
      }
    }
    for (String heading : row.getHeader()) {
      if (!COLUMNS.contains(plain(heading))) {
        problems.add(
            new Problem(
                Severity.ERROR,
                name,
                1,
                heading,
                heading,
                "one of " + String.join(", ", COLUMNS),
                "rename or delete the column"));
      }
    }
    return problems.isEmpty();
  }

  private static String plain(String heading) {
    return heading.replace("\uFEFF", "").strip().toLowerCase(Locale.ROOT);
  }

  /** Reads one line, collecting everything wrong with it. */
  private static final class LineReader {

    private final String name;
    private final NamedCsvRecord row;
    private final List<Problem> problems = new ArrayList<>();

    LineReader(String name, NamedCsvRecord row) {
      this.name = name;
      this.row = row;
    }

    List<Problem> problems() {
      return problems;
    }

    Optional<Entry> entry() {
      String cultivar = field("cultivar");
      if (cultivar.isEmpty()) {
        wrong("cultivar", "the name of a cultivar", "say what is ordered, or delete the line");
      }
      OptionalInt trees = whole("trees", 1);
      if (trees.isEmpty() && field("trees").isEmpty()) {
        wrong("trees", "a whole number, 1 or more", "say how many trees are wanted");
      }
      Optional<LocalDate> due = date();
      OptionalDouble take = percent();
      OptionalInt grafts = whole("grafts", 0);
      OptionalInt sticks = whole("sticks", 0);
      if (!problems.isEmpty()) {
        return Optional.empty();
      }
      String stock = field("rootstock");
      boolean any = stock.isEmpty() || stock.equalsIgnoreCase("any");
      OrderLine line =
          new OrderLine(
              cultivar, any ? Optional.empty() : Optional.of(stock), trees.orElseThrow(), due);
      return Optional.of(new Entry(line, take, grafts, sticks));
    }

    private String field(String column) {
      for (int i = 0; i < row.getHeader().size(); i++) {
        if (plain(row.getHeader().get(i)).equals(column) && i < row.getFieldCount()) {
          return row.getField(i).strip();
        }
      }
      return "";
    }

    private OptionalInt whole(String column, int least) {
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

    private OptionalDouble percent() {
      String typed = field("take").replace("%", "").strip();
      if (typed.isEmpty()) {
        return OptionalDouble.empty();
      }
      if (typed.matches("\\d{1,3}([.]\\d+)?")) {
        double take = Double.parseDouble(typed) / 100;
        if (take > 0 && take <= 1) {
          return OptionalDouble.of(take);
        }
      }
      wrong(
          "take",
          "per cent above 0 and up to 100, e.g. 75",
          "correct it, or leave it empty to have it taken from records");
      return OptionalDouble.empty();
    }

    private Optional<LocalDate> date() {
      String typed = field("due");
      if (typed.isEmpty()) {
        return Optional.empty();
      }
      try {
        return Optional.of(LocalDate.parse(typed));
      } catch (DateTimeParseException notADate) {
        wrong("due", "a date as year-month-day, e.g. 2027-04-15", "write it so, or leave it empty");
        return Optional.empty();
      }
    }

    private void wrong(String column, String expected, String remedy) {
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
}
