package org.taketally.answers;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/**
 * Grafts made from a known truth, seeded: every cultivar, rootstock, grafter and season equally
 * often and independently of each other, in cells of {@code each} grafts.
 */
public final class Simulated {

  public static final List<String> CULTIVARS =
      List.of("Orrin", "Tessaly", "Morvale", "Quillon", "Velmar", "Linnock", "Corvane", "Eldra");
  public static final List<String> ROOTSTOCKS = List.of("Halden seedling", "Pellin", "Ostrey");
  static final List<String> GRAFTERS = List.of("Aldis", "Berit", "Caspar", "Dagny");
  static final List<String> SEASONS = List.of("2022", "2023", "2024", "2025");

  private final int count;
  private final int each;
  private final Random random;
  private final int[][] codes;
  private final double[] days;
  private final double[] logits;

  private Simulated(int grafts, int each, long seed) {
    this.count = grafts / each;
    this.each = each;
    this.random = new Random(seed);
    this.codes = new int[4][count];
    this.days = new double[count];
    this.logits = new double[count];
    List<List<String>> levels = levels();
    for (int i = 0; i < count; i++) {
      for (int f = 0; f < 4; f++) {
        codes[f][i] = random.nextInt(levels.get(f).size());
      }
      days[i] = random.nextInt(15);
    }
    Arrays.fill(logits, 0.8);
  }

  public static Simulated grafts(int grafts, int each, long seed) {
    return new Simulated(grafts, each, seed);
  }

  private static List<List<String>> levels() {
    return List.of(CULTIVARS, ROOTSTOCKS, GRAFTERS, SEASONS);
  }

  public Simulated cultivars(double... effects) {
    return add(0, effects);
  }

  public Simulated rootstocks(double... effects) {
    return add(1, effects);
  }

  public Simulated grafters(double... effects) {
    return add(2, effects);
  }

  public Simulated seasons(double... effects) {
    return add(3, effects);
  }

  private Simulated add(int factor, double[] effects) {
    for (int i = 0; i < count; i++) {
      logits[i] += effects[codes[factor][i]];
    }
    return this;
  }

  public Simulated perDay(double slope) {
    for (int i = 0; i < count; i++) {
      logits[i] += slope * days[i];
    }
    return this;
  }

  /** A hump or hollow: {@code curvature} times the squared distance from {@code middle}. */
  public Simulated bend(double middle, double curvature) {
    for (int i = 0; i < count; i++) {
      logits[i] += curvature * Math.pow(days[i] - middle, 2);
    }
    return this;
  }

  public Simulated pairing(String cultivar, String rootstock, double effect) {
    for (int i = 0; i < count; i++) {
      if (codes[0][i] == CULTIVARS.indexOf(cultivar)
          && codes[1][i] == ROOTSTOCKS.indexOf(rootstock)) {
        logits[i] += effect;
      }
    }
    return this;
  }

  /** Scatter between cells that no column explains. */
  public Simulated scatter(double sd) {
    for (int i = 0; i < count; i++) {
      logits[i] += sd * random.nextGaussian();
    }
    return this;
  }

  public double[] logits() {
    return logits.clone();
  }

  public Cells cells() {
    int[] grafts = IntStream.range(0, count).map(i -> each).toArray();
    int[] takes = IntStream.range(0, count).map(i -> takes(logits[i])).toArray();
    List<String> names = List.of("cultivar", "rootstock", "grafter", "season");
    return new Cells(
        IntStream.range(0, 4)
            .mapToObj(f -> new Factor(names.get(f), levels().get(f), codes[f]))
            .toList(),
        List.of(new Measure("storage_days", days)),
        grafts,
        takes,
        0,
        Provenance.of("simulated", count));
  }

  private int takes(double logit) {
    double take = 1 / (1 + Math.exp(-logit));
    return (int) IntStream.range(0, each).filter(g -> random.nextDouble() < take).count();
  }
}
