package org.taketally.notebook;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.taketally.analysis.Analysis;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.records.GraftRecords;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** Names of columns and levels that a value knows, for completion within quotes. */
final class KnownWords {

  private static final int ROWS_SEARCHED = 10_000;
  private static final int WORDS = 500;

  /** More stand for rows or days, which nobody picks out of a list. */
  private static final int LEVELS = 60;

  private KnownWords() {}

  /**
   * Words that may stand where a value is asked something.
   *
   * @param value of a variable
   * @param before what was quoted last before; behind the name of a column its levels come first
   * @return best first
   */
  static Collection<String> of(Object value, String before) {
    if (value instanceof Optional<?> held) {
      return held.isPresent() ? of(held.get(), before) : List.of();
    }
    if (value instanceof GraftRecords records) {
      return of(records.frame(), before);
    }
    if (value instanceof Table table) {
      return ofTable(table, before);
    }
    if (value instanceof Cells cells) {
      return ofCells(cells, before);
    }
    if (value instanceof TakeFit fit) {
      return ofCells(fit.cells(), before);
    }
    return value instanceof Analysis analysis ? of(analysis.fit(), before) : ofAnswer(value);
  }

  private static Collection<String> ofTable(Table table, String before) {
    Set<String> words = new LinkedHashSet<>();
    if (table.columnNames().contains(before)) {
      addLevels(table.column(before), words);
    }
    words.addAll(table.columnNames());
    table.columns().forEach(column -> addLevels(column, words));
    return words;
  }

  private static void addLevels(Column<?> column, Set<String> words) {
    if (column.type() == ColumnType.STRING) {
      int rows = Math.min(column.size(), ROWS_SEARCHED);
      for (int row = 0; row < rows && words.size() < WORDS; row++) {
        words.add(column.getString(row));
      }
    }
  }

  private static Collection<String> ofCells(Cells cells, String before) {
    Set<String> words = new LinkedHashSet<>();
    cells.findFactor(before).ifPresent(factor -> words.addAll(factor.levels()));
    cells.factors().stream().map(Factor::name).forEach(words::add);
    cells.measures().forEach(measure -> words.add(measure.name()));
    cells.factors().stream()
        .filter(factor -> factor.levels().size() <= LEVELS)
        .forEach(factor -> words.addAll(factor.levels()));
    return words;
  }

  private static Collection<String> ofAnswer(Object value) {
    if (value instanceof RootstockVerdict verdict) {
      return ofAnswer(verdict.type());
    }
    if (value instanceof FactorVerdict verdict) {
      return verdict.levels().stream().map(level -> level.level()).toList();
    }
    return value instanceof Difficulty difficulty
        ? difficulty.cultivars().stream().map(each -> each.cultivar()).toList()
        : List.of();
  }
}
