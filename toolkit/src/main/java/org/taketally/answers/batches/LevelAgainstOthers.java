package org.taketally.answers.batches;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.verdict.FactorVerdict;

/**
 * Whether one level of a column, such as a fridge batch, takes worse or better than all others
 * together, all else as recorded.
 *
 * @param column of the records, e.g. {@code fridge_batch}
 * @param level the one asked about, e.g. {@code 7}
 * @param verdict on the two: {@code level} and {@value #OTHERS}
 * @param shared what its grafts have in common that the others have less, most telling first
 */
public record LevelAgainstOthers(
    String column, String level, FactorVerdict verdict, List<Shared> shared) implements Answer {

  /** What all other levels together are called. */
  public static final String OTHERS = "all others";

  public LevelAgainstOthers {
    shared = List.copyOf(shared);
  }

  /**
   * Something grafts of the level share.
   *
   * @param column e.g. {@code grafter}
   * @param level the commonest among its grafts; grafters by letter unless names were asked for
   * @param here share of the level's grafts that have it, 0 to 1
   * @param elsewhere share of the other grafts that have it, 0 to 1
   * @param alone share of the level's grafts at levels of this column that no other graft has, such
   *     as days on which nothing else was grafted, 0 to 1
   */
  public record Shared(String column, String level, double here, double elsewhere, double alone) {}

  /**
   * The comparison in points.
   *
   * @return take of the level minus take of all others; empty if they can't be compared
   */
  public Optional<FactorVerdict.Pair> difference() {
    return verdict.pair(level, OTHERS);
  }

  /**
   * Grafts and takes of the level.
   *
   * @return as counted
   */
  public TakeCount tally() {
    return tally(level);
  }

  /**
   * Grafts and takes of all others.
   *
   * @return as counted
   */
  public TakeCount others() {
    return tally(OTHERS);
  }

  private TakeCount tally(String name) {
    return verdict.levels().stream()
        .filter(l -> l.level().equals(name))
        .findFirst()
        .map(FactorVerdict.LevelTake::tally)
        .orElseThrow();
  }

  @Override
  public Question question() {
    return Question.LEVEL_APART;
  }
}
