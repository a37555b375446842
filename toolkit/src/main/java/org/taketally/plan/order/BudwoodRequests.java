package org.taketally.plan.order;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.taketally.plan.order.BudwoodRequest.BudStage;
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
 */
public record BudwoodRequests(List<BudwoodRequest> requests, List<Problem> problems) {

  private static final ListLine.Columns LINES =
      new ListLine.Columns(
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
    List<Problem> problems = new ArrayList<>();
    return of(name, ListLine.read(name, text, LINES, problems), problems);
  }

  /**
   * Reads a list kept as a sheet.
   *
   * @param file CSV, parted by commas, semicolons or tabs, or XLSX with one worksheet
   * @return the list
   * @throws org.taketally.records.problems.RecordsUnreadable if it can't be read
   */
  public static BudwoodRequests read(Path file) {
    List<Problem> problems = new ArrayList<>();
    return of(String.valueOf(file.getFileName()), ListLine.read(file, LINES, problems), problems);
  }

  private static BudwoodRequests of(String name, List<ListLine> lines, List<Problem> problems) {
    Problem none =
        new Problem(
            Severity.ERROR,
            name,
            0,
            "",
            "no line",
            "a heading line (cultivar, sticks, needed, bud_stage, buds, on_tree) and one line a"
                + " request",
            "write the list and read it again");
    Map<String, Integer> onTrees = new HashMap<>();
    List<BudwoodRequest> requests =
        ListLine.entries(lines, line -> agreeing(line, onTrees), none, problems);
    return new BudwoodRequests(requests, problems);
  }

  private static Optional<BudwoodRequest> request(ListLine line) {
    String cultivar = line.cultivar("say what is asked for, or delete the line");
    OptionalInt sticks = line.needed("sticks", "say how many sticks are wanted");
    Optional<LocalDate> needed = line.date("needed", "e.g. the day of grafting");
    if (needed.isEmpty() && line.field("needed").isEmpty()) {
      line.wrong("needed", "a date as year-month-day", "say when the wood is to be grafted");
    }
    Optional<BudStage> wanted = stage(line, "bud_stage");
    Optional<BudStage> buds = stage(line, "buds");
    OptionalInt onTree = line.whole("on_tree", 0);
    return line.problems().isEmpty()
        ? Optional.of(
            new BudwoodRequest(
                cultivar, sticks.orElseThrow(), needed.orElseThrow(), wanted, buds, onTree))
        : Optional.empty();
  }

  /** Requests of one cultivar share its trees, so they can't say different things of them. */
  private static Optional<BudwoodRequest> agreeing(ListLine line, Map<String, Integer> onTrees) {
    Optional<BudwoodRequest> request = request(line);
    if (request.isEmpty() || request.get().onTree().isEmpty()) {
      return request;
    }
    int own = request.get().onTree().getAsInt();
    int before = onTrees.getOrDefault(request.get().plainCultivar(), own);
    if (own != before) {
      line.wrong(
          "on_tree",
          "%d, as an earlier line says of %s".formatted(before, request.get().cultivar()),
          "write in each line of a cultivar all the sticks that are on its trees, or leave the"
              + " others empty");
      return Optional.empty();
    }
    onTrees.put(request.get().plainCultivar(), own);
    return request;
  }

  private static Optional<BudStage> stage(ListLine line, String column) {
    return line.word(column, STAGES).map(word -> BudStage.valueOf(word.toUpperCase(Locale.ROOT)));
  }
}
