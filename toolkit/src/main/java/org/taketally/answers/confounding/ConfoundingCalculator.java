package org.taketally.answers.confounding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.confounding.Confounding.Group;
import org.taketally.answers.confounding.Confounding.Tie;
import org.taketally.answers.confounding.Confounding.TieKind;
import org.taketally.answers.counts.CrossTabulation;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/** Works out {@link Confounding}. */
public final class ConfoundingCalculator {

  static final String CULTIVAR = RecordColumn.CULTIVAR.columnName();
  static final String PAIRING = DerivedColumn.PAIRING.columnName();

  /** Columns whose levels are sets of grafts made together, not things one would compare. */
  static final Set<String> BATCHES =
      Set.of(DerivedColumn.GRAFTING_DAY.columnName(), RecordColumn.BLOCK.columnName());

  /** Batches beyond one per level needed before a difference between batches can be judged. */
  static final int SPARE_BATCHES = 3;

  private final Cells cells;
  private final AnswerOptions options;

  private ConfoundingCalculator(Cells cells, AnswerOptions options) {
    this.cells = cells;
    this.options = options;
  }

  /**
   * Looks at which levels met.
   *
   * @param cells the records; every column of levels in them is looked at
   * @param compared the factor the question is about
   * @param options whether grafters are named
   * @return what can be compared, and the ties
   * @throws IllegalArgumentException if there is no such column
   */
  public static Confounding of(Cells cells, String compared, AnswerOptions options) {
    return new ConfoundingCalculator(cells, options).confounding(cells.factor(compared));
  }

  /** A row of several grafts has one level of everything, so it is no place to meet in. */
  private Confounding confounding(Factor compared) {
    List<Factor> others =
        cells.factors().stream()
            .filter(f -> !f.name().equals(compared.name()) && !isMadeOf(f, compared))
            .filter(f -> !BATCHES.contains(f.name()) && !f.name().equals(Cells.BATCH_ROW))
            .toList();
    List<Tie> ties = new ArrayList<>();
    batches().forEach(batch -> betweenBatches(compared, batch).ifPresent(ties::add));
    TieFinder finder = new TieFinder(cells, options);
    others.forEach(other -> finder.between(compared, other, true).ifPresent(ties::add));
    ties.sort(Comparator.comparingDouble(Tie::efficiency));
    cells
        .findFactor(CULTIVAR)
        .filter(cultivar -> !cultivar.name().equals(compared.name()))
        .ifPresent(cultivar -> ties.addAll(cultivarTies(cultivar, others, finder)));
    DesignInformation information = new DesignInformation(cells, compared, others);
    List<Group> groups = groups(compared, information, ties);
    List<Factor> allowed = new ArrayList<>(others);
    batches().stream().filter(batch -> meetWithin(compared, batch)).forEach(allowed::add);
    return new Confounding(
        compared.name(),
        groups,
        groups.size() == 1 && groups.get(0).levels().size() > 1
            ? new DesignInformation(cells, compared, allowed).efficiency()
            : efficiency(compared, groups, allowed),
        ties,
        cells.graftsTotal());
  }

  private List<Tie> cultivarTies(Factor cultivar, List<Factor> others, TieFinder finder) {
    return others.stream()
        .filter(other -> !other.name().equals(CULTIVAR))
        .flatMap(other -> finder.between(cultivar, other, false).stream())
        .sorted(Comparator.comparingDouble(Tie::efficiency))
        .toList();
  }

  private List<Factor> batches() {
    return cells.factors().stream().filter(f -> BATCHES.contains(f.name())).toList();
  }

  /**
   * Pairings are made of cultivar and rootstock, and a rootstock's seasons of the rootstock, so
   * they say nothing beside them.
   */
  private boolean isMadeOf(Factor factor, Factor compared) {
    boolean pairings = factor.name().equals(PAIRING) && !compared.name().equals(PAIRING);
    return pairings
        || cells.factors().stream()
            .map(Factor::name)
            .filter(other -> !other.equals(compared.name()))
            .anyMatch(
                other ->
                    factor.name().equals(TakeModel.together(compared.name(), other))
                        || factor.name().equals(TakeModel.together(other, compared.name())));
  }

  private Optional<Tie> betweenBatches(Factor compared, Factor batch) {
    double within = new DesignInformation(cells, compared, List.of(batch)).efficiency();
    CrossTabulation met = new CrossTabulation(cells, compared, batch);
    if (met.levelsSeen() < 2 || within >= TieFinder.TIED_BELOW) {
      return Optional.empty();
    }
    int spare = met.partnersSeen() - met.levelsSeen();
    return Optional.of(
        new Tie(
            TieKind.BETWEEN_BATCHES,
            compared.name(),
            batch.name(),
            within,
            spare < SPARE_BATCHES,
            new Confounding.OneEach(met.partnersSeen(), within < 1e-9)));
  }

  /** Where levels hardly meet within batches, batches are compared and can't be allowed for. */
  private boolean meetWithin(Factor compared, Factor batch) {
    return new DesignInformation(cells, compared, List.of(batch)).efficiency()
        >= TieFinder.TIED_BELOW;
  }

  private List<Group> groups(Factor compared, DesignInformation information, List<Tie> ties) {
    boolean refused =
        ties.stream().anyMatch(tie -> tie.kind() == TieKind.BETWEEN_BATCHES && tie.refuses());
    long[] grafts = new long[compared.size()];
    for (int i = 0; i < cells.size(); i++) {
      if (compared.code(i) != Factor.MISSING) {
        grafts[compared.code(i)] += cells.grafts(i);
      }
    }
    int[] root = IntStream.range(0, compared.size()).toArray();
    for (int a = 0; a < root.length && !refused; a++) {
      for (int b = 0; b < a; b++) {
        if (information.efficiency(a, b) >= Confounding.ENTANGLED_BELOW) {
          join(root, a, b);
        }
      }
    }
    Map<Integer, List<Integer>> members = new TreeMap<>();
    for (int a = 0; a < root.length; a++) {
      if (grafts[a] > 0) {
        members.computeIfAbsent(root[a], key -> new ArrayList<>()).add(a);
      }
    }
    return members.values().stream()
        .map(levels -> group(compared, levels, grafts))
        .sorted(Comparator.comparingLong((Group group) -> -group.grafts()))
        .toList();
  }

  private static void join(int[] root, int a, int b) {
    int from = root[a];
    int to = root[b];
    for (int i = 0; i < root.length; i++) {
      if (root[i] == from) {
        root[i] = to;
      }
    }
  }

  private Group group(Factor compared, List<Integer> levels, long[] grafts) {
    Set<String> cultivars = new TreeSet<>();
    cells
        .findFactor(CULTIVAR)
        .ifPresent(
            cultivar -> {
              for (int i = 0; i < cells.size(); i++) {
                if (levels.contains(compared.code(i)) && cultivar.code(i) >= 0) {
                  cultivars.add(cultivar.levels().get(cultivar.code(i)));
                }
              }
            });
    return new Group(
        levels.stream().map(compared.levels()::get).toList(),
        List.copyOf(cultivars),
        levels.stream().mapToLong(level -> grafts[level]).sum());
  }

  private double efficiency(Factor compared, List<Group> groups, List<Factor> others) {
    if (groups.isEmpty() || groups.get(0).levels().size() < 2) {
      return 0;
    }
    List<String> levels = groups.get(0).levels();
    Cells part =
        cells.where(
            i -> compared.code(i) >= 0 && levels.contains(compared.levels().get(compared.code(i))));
    return new DesignInformation(
            part,
            part.factor(compared.name()),
            others.stream().map(other -> part.factor(other.name())).toList())
        .efficiency();
  }
}
