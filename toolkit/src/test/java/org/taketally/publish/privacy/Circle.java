package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Provenance;

/** Small growers' circles for privacy tests: typed in, or made at random with all sorts of gaps. */
final class Circle {

  static final List<String> COLUMNS = List.of("grafter", "season", "cultivar", "rootstock");

  private final List<List<String>> rows = new ArrayList<>();
  private final List<int[]> counts = new ArrayList<>();

  /** Grafts of one member: season, cultivar, rootstock; an empty name is not recorded. */
  Circle row(String row, int takes, int grafts) {
    rows.add(List.of(row.split(" ", -1)));
    counts.add(new int[] {takes, grafts});
    return this;
  }

  int size() {
    return rows.size();
  }

  String grafter(int row) {
    return rows.get(row).get(0);
  }

  String season(int row) {
    return rows.get(row).get(1);
  }

  /** Part of the rows, in their order. */
  Circle only(BitSet kept) {
    Circle part = new Circle();
    kept.stream()
        .forEach(
            row -> {
              part.rows.add(rows.get(row));
              part.counts.add(counts.get(row));
            });
    return part;
  }

  Cells cells() {
    List<Factor> factors = new ArrayList<>();
    for (int column = 0; column < COLUMNS.size(); column++) {
      int c = column;
      List<String> levels =
          rows.stream().map(r -> r.get(c)).filter(l -> !l.isEmpty()).distinct().sorted().toList();
      int[] codes = rows.stream().mapToInt(r -> levels.indexOf(r.get(c))).toArray();
      factors.add(new Factor(COLUMNS.get(column), levels, codes));
    }
    int[] grafts = counts.stream().mapToInt(c -> c[1]).toArray();
    int[] takes = counts.stream().mapToInt(c -> c[0]).toArray();
    return new Cells(factors, List.of(), grafts, takes, 0, Provenance.of("typed", rows.size()));
  }

  /**
   * A circle in which members have habits: favourite cultivars, stocks used by one cultivar only,
   * newcomers, a few grafts here and many there, some without a name.
   */
  static Circle random(long seed) {
    Random random = new Random(seed);
    Circle circle = new Circle();
    int members = 3 + random.nextInt(7);
    int cultivars = 2 + random.nextInt(9);
    int stocks = 2 + random.nextInt(4);
    int seasons = 1 + random.nextInt(3);
    int rows = 10 + random.nextInt(120);
    for (int i = 0; i < rows; i++) {
      int cultivar = (int) (cultivars * Math.pow(random.nextDouble(), 2));
      int stock = cultivar % 3 == 2 ? stocks - 1 : random.nextInt(stocks);
      int member = (int) (members * Math.pow(random.nextDouble(), 1.5));
      int grafts = 1 + (int) (25 * Math.pow(random.nextDouble(), 3));
      double take = member == 0 ? 1 : cultivar == 1 ? 0 : 0.6;
      int takes = 0;
      for (int g = 0; g < grafts; g++) {
        takes += random.nextDouble() < take ? 1 : 0;
      }
      String name = random.nextInt(25) == 0 ? "" : "m" + member;
      circle.row(
          "%s s%d c%d r%d".formatted(name, random.nextInt(seasons), cultivar, stock),
          takes,
          grafts);
    }
    return circle;
  }
}
