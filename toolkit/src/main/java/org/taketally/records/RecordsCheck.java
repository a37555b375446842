package org.taketally.records;

import java.util.List;
import org.taketally.records.checks.ColumnCount;
import org.taketally.records.checks.LevelCount;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;

/**
 * What reading the records brought to light, rows apart.
 *
 * @param problems the first thousand of each kind, file and column in full, in the order found
 * @param summary all problems, equal ones together
 * @param provenance sources and row counts
 * @param grafts grafts assessed
 * @param takes takes among them
 * @param columns how far each column is filled in
 * @param seasons rows, grafts and takes of each season
 * @param sites rows, grafts and takes of each site
 * @param batches columns of the user's own that the dictionary names as grouping grafts treated
 *     together: lot, fridge batch, bed, tray
 */
public record RecordsCheck(
    List<Problem> problems,
    ProblemSummary summary,
    Provenance provenance,
    long grafts,
    long takes,
    List<ColumnCount> columns,
    List<LevelCount> seasons,
    List<LevelCount> sites,
    List<String> batches) {

  public RecordsCheck {
    problems = List.copyOf(problems);
    columns = List.copyOf(columns);
    seasons = List.copyOf(seasons);
    sites = List.copyOf(sites);
    batches = List.copyOf(batches);
  }

  /**
   * Files and worksheets that hold the same as others, so that grafts may count twice.
   *
   * @return problems that every answer from these records should repeat; empty if there are none
   */
  public List<Problem> sameTwice() {
    return of(ProblemKind.SAME_FILE_TWICE);
  }

  private List<Problem> of(ProblemKind kind) {
    return summary.groups().stream()
        .filter(group -> group.kind() == kind)
        .flatMap(group -> group.first().stream())
        .toList();
  }

  /**
   * What must be settled before these records can answer anything, because two readings of them
   * give different counts: what a blank result means.
   *
   * @return problems, each naming both readings; empty if all is settled
   */
  public List<Problem> unsettled() {
    return of(ProblemKind.BLANK_RESULTS);
  }

  /**
   * Stops where records read two ways and nobody has said which.
   *
   * @throws RecordsUnreadable if anything is {@link #unsettled}, naming both readings
   */
  public void requireSettled() {
    unsettled().stream()
        .findFirst()
        .ifPresent(
            problem -> {
              throw new RecordsUnreadable(problem);
            });
  }
}
