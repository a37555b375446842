package org.taketally.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Provenance;

/** The benchmark's own records as cells, its model, and nothing checked on the way. */
final class BenchCells {

  private static final String[] FACTORS = {
    RecordColumn.SEASON.columnName(),
    RecordColumn.SITE.columnName(),
    RecordColumn.GRAFTER.columnName(),
    RecordColumn.CULTIVAR.columnName(),
    RecordColumn.ROOTSTOCK.columnName(),
    RecordColumn.STOCK_CONDITION.columnName(),
    RecordColumn.METHOD.columnName(),
    RecordColumn.BUD_STAGE.columnName(),
    RecordColumn.CAMBIUM_MATCH.columnName(),
    "tool_hygiene"
  };
  private static final int[] PLACES = {1, 2, 4, 5, 6, 7, 9, 10, 14, 15};

  /** Orders that differ from the alphabet: base level first, as in the reference fits. */
  private static final Map<String, List<String>> ORDER =
      Map.of(
          RecordColumn.BUD_STAGE.columnName(), List.of("dormant", "swelling", "flushed"),
          RecordColumn.CAMBIUM_MATCH.columnName(), List.of("both-sides", "one-side", "centred"),
          RecordColumn.METHOD.columnName(),
              List.of("cleft", "side-veneer", "whip-and-tongue", "chip-bud"));

  private static final int GRAFT_DATE = 3;
  private static final int CUT_DATE = 11;
  private static final int OUTCOME = 17;

  private record Key(int[] codes) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Key that && Arrays.equals(codes, that.codes);
    }

    @Override
    public int hashCode() {
      int hash = 0;
      for (int code : codes) {
        hash = 1_000_003 * hash + code;
      }
      return hash ^ (hash >>> 15);
    }
  }

  private final List<Map<String, Integer>> levels = new ArrayList<>();
  private final Map<String, Long> days = new HashMap<>();
  private final Map<Key, int[]> counts = new HashMap<>();
  private final List<Key> order = new ArrayList<>();

  private BenchCells() {
    for (int k = 0; k < FACTORS.length; k++) {
      levels.add(new HashMap<>());
    }
  }

  static TakeModel model() {
    return TakeModel.ofTakes()
        .adjustFor(
            RecordColumn.BUD_STAGE.columnName(),
            DerivedColumn.STORAGE_DAYS.columnName(),
            RecordColumn.STOCK_CONDITION.columnName(),
            RecordColumn.CAMBIUM_MATCH.columnName(),
            "tool_hygiene",
            RecordColumn.METHOD.columnName())
        .varyBy(
            RecordColumn.CULTIVAR.columnName(),
            RecordColumn.ROOTSTOCK.columnName(),
            DerivedColumn.PAIRING.columnName(),
            RecordColumn.GRAFTER.columnName(),
            RecordColumn.SITE.columnName(),
            RecordColumn.SEASON.columnName());
  }

  static Cells read(Path file) throws IOException {
    BenchCells cells = new BenchCells();
    try (BufferedReader reader = Files.newBufferedReader(file)) {
      reader.readLine();
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        cells.add(line.split(",", -1));
      }
    }
    return cells.build(file);
  }

  private void add(String[] row) {
    int[] codes = new int[FACTORS.length + 1];
    for (int k = 0; k < FACTORS.length; k++) {
      Map<String, Integer> known = levels.get(k);
      codes[k] = known.computeIfAbsent(row[PLACES[k]], name -> known.size());
    }
    codes[FACTORS.length] = (int) (day(row[GRAFT_DATE]) - day(row[CUT_DATE]));
    Key key = new Key(codes);
    int[] count = counts.get(key);
    if (count == null) {
      count = new int[2];
      counts.put(key, count);
      order.add(key);
    }
    count[0]++;
    count[1] += row[OUTCOME].equals("taken") ? 1 : 0;
  }

  private long day(String date) {
    return days.computeIfAbsent(date, text -> LocalDate.parse(text).toEpochDay());
  }

  private Cells build(Path file) {
    int size = order.size();
    int[][] columns = new int[FACTORS.length + 1][size];
    int[] grafts = new int[size];
    int[] takes = new int[size];
    for (int i = 0; i < size; i++) {
      Key key = order.get(i);
      for (int k = 0; k < columns.length; k++) {
        columns[k][i] = key.codes()[k];
      }
      grafts[i] = counts.get(key)[0];
      takes[i] = counts.get(key)[1];
    }
    List<Factor> factors = new ArrayList<>();
    for (int k = 0; k < FACTORS.length; k++) {
      factors.add(factor(k, columns[k]));
    }
    double[] storage = Arrays.stream(columns[FACTORS.length]).asDoubleStream().toArray();
    long rows = Arrays.stream(grafts).asLongStream().sum();
    return new Cells(
        factors,
        List.of(new Measure(DerivedColumn.STORAGE_DAYS.columnName(), storage)),
        grafts,
        takes,
        0,
        Provenance.of(file.getFileName().toString(), rows));
  }

  private Factor factor(int k, int[] seen) {
    List<String> sorted =
        ORDER.getOrDefault(FACTORS[k], levels.get(k).keySet().stream().sorted().toList());
    int[] place = new int[sorted.size()];
    for (int level = 0; level < place.length; level++) {
      place[levels.get(k).get(sorted.get(level))] = level;
    }
    int[] codes = new int[seen.length];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = place[seen[i]];
    }
    return new Factor(FACTORS[k], sorted, codes);
  }
}
