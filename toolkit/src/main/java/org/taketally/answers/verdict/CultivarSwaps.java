package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.records.columns.RecordColumn;

/**
 * Whether swapping two rootstocks moves single cultivars beyond the margin, some up and some down,
 * so that their average says little about any of them.
 */
final class CultivarSwaps {

  private final MarginalTakes draws;
  private final PairingsByChance pairings;
  private final SwapsBeyond beyond;
  private final boolean[] bothWays;
  private final double probability;

  private CultivarSwaps(
      MarginalTakes draws, PairingsByChance pairings, SwapsBeyond beyond, boolean[] bothWays) {
    this.draws = draws;
    this.pairings = pairings;
    this.beyond = beyond;
    this.bothWays = bothWays;
    int both = 0;
    for (boolean own : bothWays) {
      both += own ? 1 : 0;
    }
    this.probability = (double) both / bothWays.length;
  }

  /**
   * Swaps in draws.
   *
   * @param free draws with the levels left free
   * @param factor the compared column
   * @param options the margin
   * @return empty where another column than rootstock is compared, or pairings don't vary, or there
   *     are too many
   */
  static Optional<CultivarSwaps> of(MarginalTakes free, String factor, AnswerOptions options) {
    return of(free, factor, options, new PairingsByChance(free.fit()));
  }

  private static Optional<CultivarSwaps> of(
      MarginalTakes free, String factor, AnswerOptions options, PairingsByChance pairings) {
    if (!factor.equals(RecordColumn.ROOTSTOCK.columnName()) || free.fit().isLarge()) {
      return Optional.empty();
    }
    return free.takesByPartner(factor)
        .map(
            takes -> {
              SwapsBeyond beyond = new SwapsBeyond(takes[0].length, takes[0][0].length);
              boolean[] bothWays = new boolean[takes.length];
              for (int d = 0; d < takes.length; d++) {
                bothWays[d] = beyond.add(takes[d], options.margin());
              }
              return new CultivarSwaps(free, pairings, beyond, bothWays);
            });
  }

  /** The same in other draws; what the same fit or draws gave already isn't worked out again. */
  Optional<CultivarSwaps> in(MarginalTakes others, String factor, AnswerOptions options) {
    if (others.fit() != draws.fit()) {
      return of(others, factor, options);
    }
    Optional<int[]> picked = others.pickedFrom(draws);
    return picked.isPresent()
        ? Optional.of(new CultivarSwaps(others, pairings, beyond, flags(picked.get())))
        : of(others, factor, options, pairings);
  }

  private boolean[] flags(int[] places) {
    boolean[] flags = new boolean[places.length];
    for (int d = 0; d < flags.length; d++) {
      flags[d] = bothWays[places[d]];
    }
    return flags;
  }

  /** Whether it was shown: sure enough, and pairings spread by more than chance. */
  boolean shown() {
    return probability >= VerdictRules.SURE && pairings.pValue() < VerdictRules.PAIRINGS_BY_CHANCE;
  }

  List<FactorVerdict.Note> notes() {
    List<FactorVerdict.Note> notes = new ArrayList<>();
    if (shown()) {
      example().ifPresent(notes::add);
    } else if (probability >= 0.5) {
      notes.add(new FactorVerdict.CultivarsMayDiffer(probability));
    }
    return notes;
  }

  private Optional<FactorVerdict.CultivarSwap> example() {
    List<String> levels = draws.levels(RecordColumn.ROOTSTOCK.columnName());
    List<String> cultivars =
        draws.fit().cells().factor(RecordColumn.CULTIVAR.columnName()).levels();
    return beyond
        .surest()
        .map(
            s ->
                new FactorVerdict.CultivarSwap(
                    levels.get(s.level()),
                    levels.get(s.other()),
                    cultivars.get(s.more()),
                    cultivars.get(s.less())));
  }
}
