package org.taketally.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.model.CannotFit.Reason;
import org.taketally.model.laplace.Patterns;

/** Decides which shares of the compared column enter, and keeps why the others don't. */
final class Within {

  /** Less of a level's use than this within groups, and the comparison is one across groups. */
  private static final double LEAST_WITHIN = 0.05;

  /** A share that varies less than this between groups corrects nothing. */
  private static final double LEAST_ACROSS = 1e-3;

  /** Groups needed beyond one a share: common practice, no source. */
  private static final int SPARE_GROUPS = 3;

  private final ModelTerms model;
  private final Cells cells;
  private final List<FixedBlock> blocks;
  private final Map<String, WithinComparison.Unused> unused = new LinkedHashMap<>();

  Within(ModelTerms model, Cells cells, List<FixedBlock> blocks) {
    this.model = model;
    this.cells = cells;
    this.blocks = blocks;
  }

  Map<String, WithinComparison.Unused> unused() {
    return unused;
  }

  /** Adds blocks of shares to those of the model. */
  void add() {
    LevelBlock compared = compared();
    for (String group : compared == null ? List.<String>of() : model.within()) {
      ShareBlock shares =
          ShareBlock.of(compared, group, LevelsInUse.of(cells.factor(group)), cells.grafts());
      List<String> kept = useful(shares, group);
      if (!kept.isEmpty()) {
        blocks.add(shares.only(kept));
      }
    }
  }

  private LevelBlock compared() {
    String column = model.compared().orElse("");
    if (!model.adjusted().contains(column) || cells.findFactor(column).isEmpty()) {
      throw new CannotFit(
          Reason.WRONG_COLUMN,
          column.isEmpty() ? List.of() : List.of(column),
          "comparing within %s needs a compared column of levels that doesn't vary, got %s; call compare with such a column"
              .formatted(model.within(), column.isEmpty() ? "none" : column));
    }
    return blocks.stream()
        .filter(block -> block.term().equals(column) && block instanceof LevelBlock)
        .map(LevelBlock.class::cast)
        .findFirst()
        .orElse(null);
  }

  /** Labels whose shares say something that no other column says. */
  private List<String> useful(ShareBlock shares, String group) {
    if (model.adjusted().contains(group)) {
      unused.put(group, WithinComparison.Unused.ADJUSTED_FOR);
      return List.of();
    }
    List<String> across = new ArrayList<>();
    boolean never = false;
    for (int label = 0; label < shares.labels().size(); label++) {
      double within = shares.within(label, cells.grafts());
      never |= within < LEAST_WITHIN;
      if (within >= LEAST_WITHIN && 1 - within > LEAST_ACROSS) {
        across.add(shares.labels().get(label));
      }
    }
    if (never) {
      unused.put(group, WithinComparison.Unused.HARDLY_CHANGES_WITHIN);
    } else if (across.isEmpty()) {
      unused.put(group, WithinComparison.Unused.BALANCED);
    }
    if (!across.isEmpty() && shares.shares().length < across.size() + SPARE_GROUPS) {
      unused.put(group, WithinComparison.Unused.FEW_GROUPS);
      return List.of();
    }
    return independent(shares.only(across));
  }

  /** Without shares that are sums of other fixed columns. */
  private List<String> independent(ShareBlock shares) {
    if (shares.labels().isEmpty()) {
      return List.of();
    }
    List<FixedBlock> all = new ArrayList<>(blocks);
    all.add(shares);
    Patterns patterns = FixedBlock.patterns(cells.size(), all);
    int first = patterns.width() - shares.width();
    List<Integer> aliased = Identifiability.aliased(patterns, cells.grafts());
    List<String> kept =
        IntStream.range(0, shares.width())
            .filter(label -> !aliased.contains(first + label))
            .mapToObj(shares.labels()::get)
            .toList();
    if (kept.size() < shares.width()) {
      unused.putIfAbsent(shares.group(), WithinComparison.Unused.SAID_BY_OTHER_COLUMNS);
    }
    return kept;
  }
}
