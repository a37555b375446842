package org.taketally.plan.order;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * An order book: CSV with the columns {@code cultivar} and {@code trees}, and where they are known
 * {@code rootstock} (empty or {@code any} if any will do), {@code due}, {@code take} (per cent),
 * {@code grafts} (that there can be) and {@code sticks} (that there are of the cultivar), to be
 * told what they give.
 *
 * @param entries one a line
 * @param problems lines that can't be used, with what to do; the book is complete only if there are
 *     none
 * @param headings how they were read
 */
public record OrderBook(List<Entry> entries, List<Problem> problems, ListReading headings) {

  private static final ListHeadings.Columns LINES =
      new ListHeadings.Columns(
          "order",
          List.of("cultivar", "rootstock", "trees", "due", "take", "grafts", "sticks"),
          List.of("cultivar", "trees"));

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
   * @param sticks sticks there are of the cultivar, shared by its lines; empty if not said
   */
  public record Entry(
      OrderLine line, OptionalDouble take, OptionalInt grafts, OptionalInt sticks) {}

  /**
   * Reads a book.
   *
   * @param name of the file, for problems
   * @param text comma-separated
   * @return the book
   * @throws IOException if it can't be read
   */
  public static OrderBook read(String name, Reader text) throws IOException {
    return of(ListLine.read(name, text, LINES));
  }

  /**
   * Reads a book kept as a sheet.
   *
   * @param file CSV, parted by commas, semicolons or tabs, or XLSX with one worksheet
   * @return the book
   * @throws org.taketally.records.problems.RecordsUnreadable if it can't be read
   */
  public static OrderBook read(Path file) {
    return read(file, SheetDictionary.none());
  }

  /**
   * Reads a sheet of your own.
   *
   * @param file CSV, parted by commas, semicolons or tabs, or XLSX with one worksheet
   * @param dictionary says how it is written
   * @return what it says
   * @throws org.taketally.records.problems.RecordsUnreadable if it can't be read
   */
  public static OrderBook read(Path file, SheetDictionary dictionary) {
    return of(ListLine.read(file, dictionary, LINES));
  }

  private static OrderBook of(ListLine.Read list) {
    List<ListLine> used = new ArrayList<>();
    List<Entry> entries =
        list.entries(
            line -> {
              Optional<Entry> entry = entry(line);
              entry.ifPresent(said -> used.add(line));
              return entry;
            },
            new Problem(
                Severity.ERROR,
                list.name(),
                0,
                "",
                "no line",
                "a heading line (cultivar, rootstock, trees, due) and one line an order",
                "write the order book and read it again"));
    DueSeasons.of(entries.stream().map(Entry::line).toList())
        .forEach(season -> agree(season.stream().map(used::get).toList(), list.problems()));
    return new OrderBook(entries, list.problems(), list.headings());
  }

  /** Lines of one season can't say different things of the sticks there are of a cultivar. */
  private static void agree(List<ListLine> season, List<Problem> problems) {
    SharedSticks there = new SharedSticks();
    for (ListLine line : season) {
      line.sticks("sticks", there);
      problems.addAll(line.problems());
    }
  }

  private static Optional<Entry> entry(ListLine line) {
    String cultivar = line.cultivar("say what is ordered, or delete the line");
    String stock = line.rootstock();
    OptionalInt trees = line.needed("trees", "say how many trees are wanted");
    Optional<LocalDate> due = line.date("due", "or leave it empty");
    OptionalDouble take = line.percent("take");
    OptionalInt grafts = line.whole("grafts", 0);
    OptionalInt sticks = line.whole("sticks", 0);
    if (!line.problems().isEmpty()) {
      return Optional.empty();
    }
    boolean any = stock.isEmpty() || CommonWords.value("any_stock", stock).isPresent();
    OrderLine ordered =
        new OrderLine(
            cultivar, any ? Optional.empty() : Optional.of(stock), trees.orElseThrow(), due);
    return Optional.of(new Entry(ordered, take, grafts, sticks));
  }
}
