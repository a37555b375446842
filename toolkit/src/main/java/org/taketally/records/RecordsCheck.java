package org.taketally.records;

import java.util.List;
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
 */
public record RecordsCheck(
    List<Problem> problems,
    ProblemSummary summary,
    Provenance provenance,
    long grafts,
    long takes,
    List<ColumnCount> columns,
    List<LevelCount> seasons,
    List<LevelCount> sites) {

  public RecordsCheck {
    problems = List.copyOf(problems);
    columns = List.copyOf(columns);
    seasons = List.copyOf(seasons);
    sites = List.copyOf(sites);
  }
}
