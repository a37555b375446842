package org.taketally.answers;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.taketally.cells.Factor;
import org.taketally.records.columns.RecordColumn;

/** How grafters are shown: by name if asked for, else by letters dealt out by the seed. */
public final class GrafterLabels {

  public static final String GRAFTER = RecordColumn.GRAFTER.columnName();

  private GrafterLabels() {}

  /** One label per level, in level order. */
  public static List<String> of(List<String> levels, AnswerOptions options) {
    if (options.grafterNames()) {
      return levels;
    }
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < levels.size(); i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(options.seed()));
    return order.stream().map(i -> "grafter " + letters(i)).toList();
  }

  /** Levels as they may be printed: grafters by {@link #of}, all others as they are. */
  public static List<String> shown(Factor factor, AnswerOptions options) {
    return factor.name().equals(GRAFTER) ? of(factor.levels(), options) : factor.levels();
  }

  /** A to Z, then AA, AB, ... */
  private static String letters(int number) {
    String last = String.valueOf((char) ('A' + number % 26));
    return number < 26 ? last : letters(number / 26 - 1) + last;
  }
}
