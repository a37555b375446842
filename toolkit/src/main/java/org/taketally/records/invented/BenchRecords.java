package org.taketally.records.invented;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Large invented record files for measuring speed: one row a graft, made in batches (one grafter,
 * day, site, cultivar, rootstock, method and bundle of budwood). The same size and seed give the
 * same bytes.
 */
public final class BenchRecords {

  /** Sizes measured. */
  public enum Size {
    /** 2,000 grafts. */
    S(2_000),
    /** 100,000 grafts. */
    M(100_000),
    /** 1,000,000 grafts. */
    L(1_000_000),
    /** 10,000,000 grafts. */
    XL(10_000_000);

    private final int rows;

    Size(int rows) {
      this.rows = rows;
    }

    /** Cultivars, rootstocks, grafters, sites, seasons. */
    private int[] levels() {
      return switch (this) {
        case S -> new int[] {25, 6, 8, 3, 3};
        case M -> new int[] {200, 20, 60, 12, 6};
        case L -> new int[] {1_000, 40, 300, 40, 10};
        case XL -> new int[] {3_000, 80, 1_500, 150, 15};
      };
    }

    /**
     * Rows of the file, header excluded.
     *
     * @return one a graft
     */
    public int rows() {
      return rows;
    }
  }

  private record Choice(String[] names, double[] upTo, double[] effects) {
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  private record Pool(int[] levels, double[] upTo, double[] effects, String[] names) {
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  /** How the two columns are to be read that are not named as ours. */
  public static final String DICTIONARY =
      "{\"columns\": {\"record\": \"graft_id\", \"tool_cleaning\": \"tool_hygiene\"}}";

  private static final String HEADER =
      "graft_id,season,site,graft_date,grafter,cultivar,rootstock,stock_condition,"
          + "stock_diameter_mm,method,bud_stage,budwood_cut_date,storage_temp_c,"
          + "scion_diameter_mm,cambium_match,tool_hygiene,assessed_date,outcome\n";

  private static final double INTERCEPT = 1.1;
  private static final double A_DAY = -0.06;
  private static final double HOME = 0.7;
  private static final int MOST_DAYS = 28;
  private static final int CHUNK = 20_000;
  private static final double MEAN_BATCH = 10;
  private static final double PAIRING_SD = 0.15;
  private static final String[] PREFIX = {"cv", "rs", "gr", "site"};
  private static final double[] SDS = {0.8, 0.05, 0.5, 0.3, 0.25};
  private static final double[] ZIPF = {0.8, 0.9, 0.7, 0.6, 0.2};

  private static final Choice BUD =
      choice("dormant", 0.35, 0, "swelling", 0.45, 0.6, "flushed", 0.20, -1.2);
  private static final Choice CONDITION = choice("healthy", 0.85, 0, "weak", 0.15, -0.9);
  private static final Choice CAMBIUM =
      choice("one-side", 0.40, 0.5, "both-sides", 0.35, 0, "centred", 0.25, -0.4);
  private static final Choice HYGIENE =
      choice("alcohol", 0.50, 0, "bleach", 0.25, 0.02, "none", 0.25, -0.3);
  private static final Choice METHOD =
      choice(
          "cleft",
          0.35,
          0,
          "side-veneer",
          0.30,
          0.10,
          "whip-and-tongue",
          0.25,
          0.05,
          "chip-bud",
          0.10,
          -0.12);
  private static final Choice STOCK_AND_CAMBIUM = both(CONDITION, CAMBIUM);

  private final int rows;
  private final SeededDraws random;
  private final List<Pool> pools = new ArrayList<>();
  private final double[] pairings;
  private final int[] homes;
  private final String[] days;
  private final int[] seasonStart;
  private final double[] storageUpTo = new double[MOST_DAYS + 1];
  private final Appendable out;
  private int done;

  private BenchRecords(Size size, long seed, Appendable out) {
    this.rows = size.rows;
    this.random = new SeededDraws(seed);
    this.out = out;
    int[] levels = size.levels();
    double[][] effects = new double[levels.length][];
    for (int k = 0; k < levels.length; k++) {
      effects[k] = normals(levels[k], SDS[k]);
    }
    this.pairings = normals(levels[0] * levels[1], PAIRING_SD);
    int firstYear = 2024 - levels[4] + 1;
    for (int k = 0; k < levels.length; k++) {
      String[] names =
          k < PREFIX.length ? names(PREFIX[k], levels[k]) : years(firstYear, levels[k]);
      pools.add(new Pool(random.shuffled(levels[k]), zipf(levels[k], ZIPF[k]), effects[k], names));
    }
    this.homes = random.choices(pools.get(3).levels(), pools.get(3).upTo(), levels[2]);
    LocalDate first = LocalDate.of(firstYear, 1, 1);
    this.days = new String[366 * (levels[4] + 1)];
    for (int d = 0; d < days.length; d++) {
      days[d] = first.plusDays(d).toString();
    }
    this.seasonStart = new int[levels[4]];
    for (int y = 0; y < seasonStart.length; y++) {
      seasonStart[y] = (int) ChronoUnit.DAYS.between(first, LocalDate.of(firstYear + y, 7, 1));
    }
    double total = 0;
    for (int d = 0; d <= MOST_DAYS; d++) {
      total += Math.exp(-d / 7.0);
      storageUpTo[d] = total;
    }
  }

  /**
   * Writes a file.
   *
   * @param size how large
   * @param seed any number from 0 to 4294967295
   * @param out where to
   * @throws UncheckedIOException if it can't be written
   */
  public static void write(Size size, long seed, Appendable out) {
    try {
      new BenchRecords(size, seed, out).write();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private void write() throws IOException {
    out.append(HEADER);
    while (done < rows) {
      int batches =
          Math.min(CHUNK, Math.max(1, (int) ((rows - done) / Math.max(1.0, MEAN_BATCH)) + 1));
      int[][] drawn = new int[10][];
      for (int k = 0; k < 5; k++) {
        drawn[k] = random.choices(pools.get(k).levels(), pools.get(k).upTo(), batches);
      }
      drawn[5] = random.choices(METHOD.upTo(), batches);
      drawn[6] = random.choices(BUD.upTo(), batches);
      drawn[7] = random.choices(HYGIENE.upTo(), batches);
      drawn[8] = random.choices(storageUpTo, batches);
      drawn[9] = random.evenChoices(13, batches);
      for (int b = 0; b < batches && done < rows; b++) {
        int[] batch = new int[10];
        for (int k = 0; k < 10; k++) {
          batch[k] = drawn[k][b];
        }
        batch(batch);
      }
    }
  }

  private void batch(int[] batch) throws IOException {
    if (random.next() < HOME) {
      batch[3] = homes[batch[2]];
    }
    double geometric = Math.log(1 - 1 / MEAN_BATCH);
    int size = Math.min(rows - done, 1 + (int) (Math.log(1.0 - random.next()) / geometric));
    double eta =
        INTERCEPT
            + BUD.effects()[batch[6]]
            + A_DAY * batch[8]
            + HYGIENE.effects()[batch[7]]
            + METHOD.effects()[batch[5]]
            + effect(0, batch)
            + effect(1, batch)
            + pairings[batch[0] * pools.get(1).names().length + batch[1]]
            + effect(2, batch)
            + effect(3, batch)
            + effect(4, batch);
    int day = seasonStart[batch[4]] + (int) (random.next() * 120);
    String before =
        String.join(
            ",",
            name(4, batch),
            name(3, batch),
            days[day],
            name(2, batch),
            name(0, batch),
            name(1, batch));
    String middle =
        String.join(
            ",",
            METHOD.names()[batch[5]],
            BUD.names()[batch[6]],
            days[day - batch[8]],
            tenths(20 + 5 * batch[9]));
    String after = HYGIENE.names()[batch[7]] + "," + days[day + 42 + (int) (random.next() * 28)];
    grafts(size, Math.exp(-eta), before, middle, after);
  }

  private double effect(int k, int[] batch) {
    return pools.get(k).effects()[batch[k]];
  }

  private String name(int k, int[] batch) {
    return pools.get(k).names()[batch[k]];
  }

  private void grafts(int size, double odds, String before, String middle, String after)
      throws IOException {
    int digits = Integer.toString(rows).length();
    for (int q : random.choices(STOCK_AND_CAMBIUM.upTo(), size)) {
      done++;
      int stock = (int) ((random.next() + random.next()) * 60.5);
      int scion = (int) ((random.next() + random.next()) * 35.5);
      double effect = STOCK_AND_CAMBIUM.effects()[q];
      boolean taken = random.next() * (1.0 + odds * Math.exp(-effect)) < 1.0;
      String number = Integer.toString(done);
      int cambiums = CAMBIUM.names().length;
      out.append('g')
          .append("0".repeat(digits - number.length()))
          .append(number)
          .append(',')
          .append(before)
          .append(',')
          .append(CONDITION.names()[q / cambiums])
          .append(',')
          .append(tenths(60 + stock))
          .append(',')
          .append(middle)
          .append(',')
          .append(tenths(40 + scion))
          .append(',')
          .append(CAMBIUM.names()[q % cambiums])
          .append(',')
          .append(after)
          .append(taken ? ",taken\n" : ",failed\n");
    }
  }

  private static String tenths(int value) {
    return value / 10 + "." + value % 10;
  }

  private double[] normals(int count, double sd) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = sd * random.nextGaussian();
    }
    return values;
  }

  private static String[] names(String prefix, int count) {
    int digits = Math.max(2, Integer.toString(count).length());
    String[] names = new String[count];
    for (int i = 0; i < count; i++) {
      names[i] = String.format(Locale.ROOT, "%s-%0" + digits + "d", prefix, i + 1);
    }
    return names;
  }

  private static String[] years(int first, int count) {
    String[] names = new String[count];
    for (int i = 0; i < count; i++) {
      names[i] = Integer.toString(first + i);
    }
    return names;
  }

  private static double[] zipf(int count, double exponent) {
    double[] upTo = new double[count];
    double total = 0;
    for (int k = 0; k < count; k++) {
      total += Math.pow(k + 1.0, -exponent);
      upTo[k] = total;
    }
    return upTo;
  }

  /** Name, share, effect; name, share, effect; ... */
  private static Choice choice(Object... parts) {
    int count = parts.length / 3;
    String[] names = new String[count];
    double[] upTo = new double[count];
    double[] effects = new double[count];
    double total = 0;
    for (int i = 0; i < count; i++) {
      names[i] = (String) parts[3 * i];
      total += ((Number) parts[3 * i + 1]).doubleValue();
      upTo[i] = total;
      effects[i] = ((Number) parts[3 * i + 2]).doubleValue();
    }
    return new Choice(names, upTo, effects);
  }

  private static Choice both(Choice first, Choice second) {
    double[] firstShares = {0.85, 0.15};
    double[] secondShares = {0.40, 0.35, 0.25};
    int width = second.names().length;
    int count = first.names().length * width;
    double[] upTo = new double[count];
    double[] effects = new double[count];
    String[] names = new String[count];
    double total = 0;
    for (int q = 0; q < count; q++) {
      total += firstShares[q / width] * secondShares[q % width];
      upTo[q] = total;
      effects[q] = first.effects()[q / width] + second.effects()[q % width];
      names[q] = first.names()[q / width] + ", " + second.names()[q % width];
    }
    return new Choice(names, upTo, effects);
  }
}
