package org.taketally.plan.order;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.taketally.plan.order.BudwoodRequest.BudStage;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * A list of requests for budwood: CSV with the columns {@code cultivar}, {@code sticks} and {@code
 * needed} (the day of grafting), and where they are known {@code bud_stage} (wanted), {@code buds}
 * (their stage on the mother trees today) and {@code on_tree} (sticks that can be cut).
 *
 * @param requests one a line
 * @param problems lines that can't be used, with what to do; the list is complete only if there are
 *     none
 * @param headings how they were read
 */
public record BudwoodRequests(
    List<BudwoodRequest> requests, List<Problem> problems, ListReading headings) {

  private static final ListHeadings.Columns LINES =
      new ListHeadings.Columns(
          "request",
          List.of("cultivar", "sticks", "needed", "bud_stage", "buds", "on_tree"),
          List.of("cultivar", "sticks", "needed"));

  private static final List<String> STAGES =
      Arrays.stream(BudStage.values()).map(s -> s.name().toLowerCase(Locale.ROOT)).toList();

  public BudwoodRequests {
    requests = List.copyOf(requests);
    problems = List.copyOf(problems);
  }

  /**
   * Reads a list.
   *
   * @param name of the file, for problems
   * @param text comma-separated
   * @return the list
   * @throws IOException if it can't be read
   */
  public static BudwoodRequests read(String name, Reader text) throws IOException {
    return of(ListLine.read(name, text, LINES));
  }

  /**
   * Reads a list kept as a sheet.
   *
   * @param file CSV, parted by commas, semicolons or tabs, or XLSX with one worksheet
   * @return the list
   * @throws org.taketally.records.problems.RecordsUnreadable if it can't be read
   */
  public static BudwoodRequests read(Path file) {
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
  public static BudwoodRequests read(Path file, SheetDictionary dictionary) {
    return of(ListLine.read(file, dictionary, LINES));
  }

  private static BudwoodRequests of(ListLine.Read list) {
    SharedSticks onTrees = new SharedSticks();
    List<BudwoodRequest> requests =
        list.entries(
            line -> request(line, onTrees),
            new Problem(
                Severity.ERROR,
                list.name(),
                0,
                "",
                "no line",
                "a heading line (cultivar, sticks, needed, bud_stage, buds, on_tree) and one line a"
                    + " request",
                "write the list and read it again"));
    return new BudwoodRequests(requests, list.problems(), list.headings());
  }

  private static Optional<BudwoodRequest> request(ListLine line, SharedSticks onTrees) {
    String cultivar = line.cultivar("say what is asked for, or delete the line");
    OptionalInt sticks = line.needed("sticks", "say how many sticks are wanted");
    Optional<LocalDate> needed = line.date("needed", "e.g. the day of grafting");
    if (needed.isEmpty() && line.field("needed").isEmpty()) {
      line.wrong("needed", "a date as yyyy-MM-dd", "say when the wood is to be grafted");
    }
    Optional<BudStage> wanted = stage(line, "bud_stage");
    Optional<BudStage> buds = stage(line, "buds");
    OptionalInt onTree = line.sticks("on_tree", onTrees);
    return line.problems().isEmpty()
        ? Optional.of(
            new BudwoodRequest(
                cultivar, sticks.orElseThrow(), needed.orElseThrow(), wanted, buds, onTree))
        : Optional.empty();
  }

  private static Optional<BudStage> stage(ListLine line, String column) {
    return line.word(column, STAGES, RecordColumn.BUD_STAGE.columnName())
        .map(word -> BudStage.valueOf(word.toUpperCase(Locale.ROOT)));
  }
}
