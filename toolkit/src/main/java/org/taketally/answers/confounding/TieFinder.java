package org.taketally.answers.confounding;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.confounding.Confounding.Tie;
import org.taketally.answers.confounding.Confounding.TieKind;
import org.taketally.answers.counts.CrossTabulation;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/** Finds the ties between two factors. */
final class TieFinder {

  /** Below this share of the information left, a level's comparison is called tied. */
  static final double TIED_BELOW = 0.25;

  /** Fewer grafts of a level than this are not worth a word. */
  private static final int GRAFTS_WORTH_A_WORD = 10;

  private final Cells cells;
  private final AnswerOptions options;

  TieFinder(Cells cells, AnswerOptions options) {
    this.cells = cells;
    this.options = options;
  }

  /** The tie of {@code factor} to {@code other}, if there is one; {@code asked}: it is compared. */
  Optional<Tie> between(Factor factor, Factor other, boolean asked) {
    CrossTabulation met = new CrossTabulation(cells, factor, other);
    if (met.levelsSeen() < 2 || met.partnersSeen() < 2) {
      return Optional.empty();
    }
    List<List<Integer>> groups = met.groups();
    if (groups.size() == met.levelsSeen()) {
      return Optional.of(sameThing(factor, other, asked));
    }
    if (groups.size() > 1) {
      return Optional.of(apart(factor, other, met, asked));
    }
    List<Integer> tied =
        IntStream.range(0, factor.size())
            .filter(a -> met.grafts(a) >= (asked ? 1 : GRAFTS_WORTH_A_WORD))
            .filter(a -> met.efficiency(a) < TIED_BELOW)
            .boxed()
            .sorted(Comparator.comparingDouble(met::efficiency))
            .toList();
    return tied.isEmpty() ? Optional.empty() : Optional.of(loosely(factor, other, met, tied));
  }

  private static Tie sameThing(Factor factor, Factor other, boolean asked) {
    return new Tie(
        TieKind.SAME_THING, factor.name(), other.name(), 0, asked, new Confounding.EachItsOwn());
  }

  private Tie apart(Factor factor, Factor other, CrossTabulation met, boolean asked) {
    List<List<Integer>> groups = met.groups();
    List<Confounding.LevelAlone> alone =
        groups.stream()
            .filter(group -> group.size() == 1)
            .map(group -> alone(factor, other, met, group.get(0)))
            .toList();
    Confounding.TieDetail detail =
        alone.isEmpty()
            ? new Confounding.SetsApart(
                groups.stream()
                    .map(group -> group.stream().map(i -> name(factor, i)).toList())
                    .toList())
            : new Confounding.LevelsAlone(alone);
    return new Tie(TieKind.NEVER_TOGETHER, factor.name(), other.name(), 0, asked, detail);
  }

  private Confounding.LevelAlone alone(
      Factor factor, Factor other, CrossTabulation met, int level) {
    return new Confounding.LevelAlone(
        name(factor, level), met.partners(level), name(other, met.mainPartner(level)));
  }

  private Tie loosely(Factor factor, Factor other, CrossTabulation met, List<Integer> tied) {
    int level = tied.get(0);
    int partner = met.mainPartner(level);
    double ofLevel = met.shareOfLevel(level, partner);
    return new Tie(
        ofLevel >= 0.5 ? TieKind.ONE_HOLDS_MOST : TieKind.MOSTLY_TOGETHER,
        factor.name(),
        other.name(),
        met.efficiency(level),
        false,
        new Confounding.HeldTogether(
            name(factor, level),
            name(other, partner),
            ofLevel,
            met.shareOfPartner(level, partner),
            tied.size() - 1));
  }

  private String name(Factor factor, int level) {
    return GrafterLabels.shown(factor, options).get(level);
  }
}
