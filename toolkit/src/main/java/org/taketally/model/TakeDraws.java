package org.taketally.model;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Draws from the posterior of a fit: fixed effects, standard deviations and deviations together.
 * The same fit, count and seed give the same draws.
 */
public final class TakeDraws {

  /** Makes one draw. */
  interface Source {
    Draw draw(int number);
  }

  /**
   * One draw.
   *
   * @param beta fixed effects
   * @param sds standard deviations
   * @param effects deviations, one array a varying column
   */
  record Draw(double[] beta, double[] sds, double[][] effects) {
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  private static final long KEPT_NUMBERS = 40_000_000;

  private final TakeDesign design;
  private final List<VaryingFactor> varying;
  private final Map<String, Integer> places = new LinkedHashMap<>();
  private final int count;
  private final Source source;
  private final AtomicReferenceArray<Draw> kept;
  private Draw last;
  private int lastNumber = -1;

  TakeDraws(TakeDesign design, List<VaryingFactor> varying, int count, Source source) {
    this.design = design;
    this.varying = List.copyOf(varying);
    for (VaryingFactor factor : varying) {
      places.put(factor.factor(), places.size());
    }
    this.count = count;
    this.source = source;
    long numbers = varying.stream().mapToLong(factor -> factor.levels().size()).sum();
    this.kept = numbers * count <= KEPT_NUMBERS ? new AtomicReferenceArray<>(count) : null;
  }

  /**
   * Number of draws.
   *
   * @return at least 1
   */
  public int count() {
    return count;
  }

  /**
   * Fixed effects of one draw.
   *
   * @param d 0 to count - 1
   * @return a copy, in the order of {@link TakeFit#fixed()}, logits
   */
  public double[] beta(int d) {
    return draw(d).beta().clone();
  }

  /**
   * Standard deviations of one draw.
   *
   * @param d 0 to count - 1
   * @return a copy, in the order of {@link TakeFit#varying()}, logits
   */
  public double[] sds(int d) {
    return draw(d).sds().clone();
  }

  /**
   * Deviations of one draw.
   *
   * @param column a varying column of the fit
   * @param d 0 to count - 1
   * @return a copy, one per level of {@link VaryingFactor#levels()}, logits
   */
  public double[] effects(String column, int d) {
    return draw(d).effects()[placeOf(column)].clone();
  }

  /**
   * One varying column of all draws, looked up once where it is needed draw by draw.
   *
   * @param name a varying column of the fit
   * @return its deviations
   * @throws IllegalArgumentException if the column doesn't vary in the fit
   */
  public Column column(String name) {
    return new Column(placeOf(name));
  }

  /** The deviations of one varying column, draw by draw. */
  public final class Column {

    private final int place;

    private Column(int place) {
      this.place = place;
    }

    /**
     * In one draw.
     *
     * @param d 0 to count - 1
     * @return the deviations there
     */
    public Deviations in(int d) {
      Draw draw = draw(d);
      return new Deviations(draw.effects()[place], draw.sds()[place], place, d);
    }

    /**
     * Deviation of one level in one draw.
     *
     * @param level place in {@link VaryingFactor#levels()}
     * @param d 0 to count - 1
     * @return logits
     */
    public double effect(int level, int d) {
      return draw(d).effects()[place][level];
    }

    /**
     * Standard deviation between levels in one draw.
     *
     * @param d 0 to count - 1
     * @return logits
     */
    public double sd(int d) {
      return draw(d).sds()[place];
    }
  }

  /** The deviations of one varying column in one draw. */
  public static final class Deviations {

    private final double[] effects;
    private final double sd;
    private final int place;
    private final int draw;

    private Deviations(double[] effects, double sd, int place, int draw) {
      this.effects = effects;
      this.sd = sd;
      this.place = place;
      this.draw = draw;
    }

    /**
     * Deviation of one level.
     *
     * @param level place in {@link VaryingFactor#levels()}
     * @return logits
     */
    public double of(int level) {
      return effects[level];
    }

    /**
     * What a level never seen deviates by: a pairing never made, another season. Normal with the
     * standard deviation of the draw.
     *
     * @param key tells levels never seen from each other; the same key gives the same deviation
     * @return logits
     */
    public double ofUnseen(long key) {
      long seed = ((key * 31 + place) * 0x9E3779B97F4A7C15L) ^ (draw * 0xD1B54A32D192ED03L);
      return sd * new SplittableRandom(seed).nextGaussian();
    }
  }

  /**
   * Every draw of one fixed effect.
   *
   * @param name as {@link FixedEffect#name} gives it
   * @return one a draw, logits
   * @throws IllegalArgumentException if the fit has no such effect, naming those it has
   */
  public double[] fixed(String name) {
    List<String> names = fixedNames();
    int place = names.indexOf(name);
    if (place < 0) {
      throw new IllegalArgumentException(
          "no fixed effect \"%s\" in this fit; there are %s".formatted(name, names));
    }
    return each(d -> beta(d)[place]);
  }

  /**
   * Names of the fixed effects.
   *
   * @return in the order of {@link #beta}
   */
  public List<String> fixedNames() {
    return design.names();
  }

  /**
   * Every draw of one standard deviation.
   *
   * @param column a varying column of the fit
   * @return one a draw, logits
   * @throws IllegalArgumentException if the column doesn't vary in the fit
   */
  public double[] sds(String column) {
    return each(column(column)::sd);
  }

  /**
   * Every draw of what one level deviates by.
   *
   * @param column a varying column of the fit
   * @param level one of its levels
   * @return one a draw, logits
   * @throws IllegalArgumentException if the column doesn't vary in the fit, or has no such level
   */
  public double[] effects(String column, String level) {
    int place = placeOf(column);
    int code = varying.get(place).levels().indexOf(level);
    if (code < 0) {
      throw new IllegalArgumentException(
          "no %s \"%s\" in this fit; there are: %s"
              .formatted(column, level, String.join(", ", varying.get(place).levels())));
    }
    Column own = column(column);
    return each(d -> own.effect(code, d));
  }

  private double[] each(IntToDoubleFunction of) {
    return IntStream.range(0, count).mapToDouble(of).toArray();
  }

  /**
   * Some of these draws, as often as they are asked for.
   *
   * @param numbers 0 to count - 1, at least one, in the order wanted
   * @return as many draws as numbers
   */
  public TakeDraws picked(int[] numbers) {
    int[] own = numbers.clone();
    return new TakeDraws(design, varying, own.length, number -> draw(own[number]));
  }

  private int placeOf(String column) {
    Integer place = places.get(column);
    if (place == null) {
      throw new IllegalArgumentException(
          "%s doesn't vary in this fit; %s do".formatted(column, places.keySet()));
    }
    return place;
  }

  /**
   * Logit of take of each cell in one draw.
   *
   * @param d 0 to count - 1
   * @return one per cell of {@link TakeFit#cells()}
   */
  public double[] linearPredictor(int d) {
    Draw draw = draw(d);
    return design.linearPredictor(draw.beta(), draw.effects());
  }

  Draw draw(int d) {
    if (kept == null) {
      return again(d);
    }
    Draw known = kept.get(d);
    if (known == null) {
      kept.compareAndSet(d, null, source.draw(d));
      known = kept.get(d);
    }
    return known;
  }

  private synchronized Draw again(int d) {
    if (lastNumber != d) {
      last = source.draw(d);
      lastNumber = d;
    }
    return last;
  }
}
