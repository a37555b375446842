package org.taketally.answers.adjusted;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.taketally.answers.counts.CrossTabulation;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;

/**
 * Has the compared column compared within groups that share their luck ({@link
 * TakeModel#compareWithin}): a stock used mostly on bad days looks bad.
 *
 * <p>Whether that is needed is decided by who was used where alone, never by takes, so it can't
 * lean the answer: not where levels are spread over groups as evenly as dealing by lot would. Nor
 * can it be done where levels hardly met within groups: then groups are what is compared. Where
 * groups are too few for shares they are adjusted for level by level, which compares within them
 * just as well.
 *
 * @param model the model to fit
 * @param groups what was decided for each column of groups
 */
public record WithinGroups(TakeModel model, List<Group> groups) {

  /** What was decided for a column of groups. */
  public enum Way {
    /** Levels are spread over groups as by lot: nothing needs doing. */
    BY_LOT,
    /** Compared within groups by their shares. */
    SHARES,
    /** Too few groups for shares: adjusted for level by level. */
    LEVELS,
    /** Levels hardly met within groups: the comparison is between groups. */
    BETWEEN
  }

  /**
   * One column of groups.
   *
   * @param column its name
   * @param way what was decided
   * @param within share of the information about the compared levels that lies within groups, 0 to
   *     1
   */
  public record Group(String column, Way way, double within) {}

  /** Dealing by lot gives as uneven a spread less often than this. */
  private static final double BY_LOT = 0.05;

  /** With less of the information within groups than this, levels hardly met in them. */
  private static final double TIED_BELOW = 0.25;

  /** Groups needed beyond one a share. */
  private static final int SPARE_GROUPS = 3;

  public WithinGroups {
    groups = List.copyOf(groups);
  }

  /**
   * Decides for each column that varies.
   *
   * @param cells the records
   * @param model a model; without a compared column that enters as levels it stays as it is
   * @return the model to fit
   */
  public static WithinGroups of(Cells cells, TakeModel model) {
    WithinGroups decided = new WithinGroups(model, List.of());
    String compared = model.compared().orElse("");
    if (!model.adjusted().contains(compared) || cells.findFactor(compared).isEmpty()) {
      return decided;
    }
    for (String column : model.varying()) {
      boolean groups =
          !column.equals(compared)
              && !column.equals(TakeModel.PAIRING)
              && !column.equals(Cells.BATCH_ROW)
              && !model.within().contains(column)
              && cells.findFactor(column).isPresent();
      decided =
          groups ? decided.with(cells, cells.factor(compared), cells.factor(column)) : decided;
    }
    return decided;
  }

  private WithinGroups with(Cells cells, Factor compared, Factor group) {
    CrossTabulation met = new CrossTabulation(cells, compared, group);
    double within = within(met, compared.size());
    Way way = way(cells, compared, group, within);
    List<Group> more = new ArrayList<>(groups);
    more.add(new Group(group.name(), way, within));
    TakeModel changed =
        switch (way) {
          case BY_LOT, BETWEEN -> model;
          case SHARES -> model.compareWithin(group.name());
          case LEVELS -> model.without(group.name()).adjustFor(group.name());
        };
    return new WithinGroups(changed, more);
  }

  /** Mean over levels, each with the weight of its grafts. */
  private static double within(CrossTabulation met, int levels) {
    double sum = 0;
    double grafts = 0;
    for (int k = 0; k < levels; k++) {
      if (met.grafts(k) > 0) {
        sum += met.grafts(k) * met.efficiency(k);
        grafts += met.grafts(k);
      }
    }
    return grafts == 0 ? 0 : sum / grafts;
  }

  private static Way way(Cells cells, Factor compared, Factor group, double within) {
    CrossTabulation met = new CrossTabulation(cells, compared, group);
    int levels = met.levelsSeen();
    int size = met.partnersSeen();
    if (levels < 2 || size < 2 || byLot(cells, compared, group) >= BY_LOT) {
      return Way.BY_LOT;
    }
    if (within < TIED_BELOW) {
      return Way.BETWEEN;
    }
    return size >= levels - 1 + SPARE_GROUPS ? Way.SHARES : Way.LEVELS;
  }

  /**
   * How often dealing by lot gives groups as uneven: chi-square test of independence. What is dealt
   * are rows, not grafts: rows of n grafts make counts n times as uneven.
   */
  private static double byLot(Cells cells, Factor compared, Factor group) {
    double[][] grafts = new double[compared.size()][group.size()];
    double[] byLevel = new double[compared.size()];
    double[] byGroup = new double[group.size()];
    double total = 0;
    for (int i = 0; i < cells.size(); i++) {
      int level = compared.code(i);
      int of = group.code(i);
      if (level != Factor.MISSING && of != Factor.MISSING) {
        int n = cells.grafts(i);
        grafts[level][of] += n;
        byLevel[level] += n;
        byGroup[of] += n;
        total += n;
      }
    }
    double chiSquare = 0;
    for (int k = 0; k < byLevel.length; k++) {
      for (int g = 0; g < byGroup.length; g++) {
        double expected = byLevel[k] * byGroup[g] / total;
        double off = grafts[k][g] - expected;
        chiSquare += expected > 0 ? off * off / expected : 0;
      }
    }
    return ChiSquaredDistribution.of((used(byLevel) - 1.0) * (used(byGroup) - 1.0))
        .survivalProbability(chiSquare / graftsDealtTogether(cells));
  }

  /** Sum of squares of the grafts of rows, over their sum: 1 for single grafts, n in rows of n. */
  private static double graftsDealtTogether(Cells cells) {
    Factor rows = cells.findFactor(Cells.BATCH_ROW).orElse(null);
    if (rows == null) {
      return 1;
    }
    double[] inRow = new double[rows.size()];
    double squares = 0;
    for (int i = 0; i < cells.size(); i++) {
      int row = rows.code(i);
      if (row == Factor.MISSING) {
        squares += cells.grafts(i);
      } else {
        inRow[row] += cells.grafts(i);
      }
    }
    for (double n : inRow) {
      squares += n * n;
    }
    return cells.graftsTotal() == 0 ? 1 : squares / cells.graftsTotal();
  }

  private static long used(double[] grafts) {
    return java.util.Arrays.stream(grafts).filter(n -> n > 0).count();
  }
}
