package org.taketally.answers;

/**
 * What the person asking may choose. Immutable: {@code AnswerOptions.defaults().withMargin(0.05)}.
 *
 * @param coverage coverage of the likely ranges, strictly between 0 and 1; default 0.95
 * @param margin difference in take that would change what you do, as a fraction of 1 (0.10 is 10
 *     points), strictly between 0 and 1; default 0.10
 * @param draws posterior draws behind ranges, ranks and chances, at least 100; default 2,000
 * @param seed seed of everything random; same seed, same answer; default 1
 * @param bands thresholds of the difficulty bands
 * @param grafterNames whether grafters are named; default false
 * @param priorScale how much columns that vary (days, hands, cultivars) are believed to differ
 *     before the records are seen: scale of the half-normal prior of their standard deviations,
 *     logits, above 0; default 1
 */
public record AnswerOptions(
    double coverage,
    double margin,
    int draws,
    long seed,
    Bands bands,
    boolean grafterNames,
    double priorScale) {

  private static final double WIDEST_PRIOR = 10;

  /**
   * When a cultivar is called easy, middling or hard.
   *
   * @param hardBelow adjusted take below which a cultivar is hard, 0 to 1; default 0.50
   * @param easyFrom adjusted take from which a cultivar is easy, {@code hardBelow} to 1; default
   *     0.75
   * @param sure chance needed before a band is named, above 0.5, below 1; default 0.80
   */
  public record Bands(double hardBelow, double easyFrom, double sure) {

    /** Common practice, no source: half and three quarters of the grafts, eight chances in ten. */
    public static final Bands DEFAULT = new Bands(0.50, 0.75, 0.80);

    public Bands {
      if (!(hardBelow > 0 && hardBelow <= easyFrom && easyFrom < 1)) {
        throw new IllegalArgumentException(
            "bands need 0 < hardBelow <= easyFrom < 1, got %s and %s"
                .formatted(hardBelow, easyFrom));
      }
      if (!(sure > 0.5 && sure < 1)) {
        throw new IllegalArgumentException("sure must lie between 0.5 and 1, got " + sure);
      }
    }
  }

  public AnswerOptions {
    if (!(coverage > 0 && coverage < 1)) {
      throw new IllegalArgumentException(
          "coverage must lie between 0 and 1, e.g. 0.95, got " + coverage);
    }
    if (!(margin > 0 && margin < 1)) {
      throw new IllegalArgumentException(
          "margin must lie between 0 and 1 (0.10 for 10 points), got " + margin);
    }
    if (draws < 100) {
      throw new IllegalArgumentException("draws must be 100 or more, got " + draws);
    }
    if (!(priorScale > 0 && priorScale <= WIDEST_PRIOR)) {
      throw new IllegalArgumentException(
          "the prior's scale must be above 0 and at most %.0f logits, e.g. 1, got %s"
              .formatted(WIDEST_PRIOR, priorScale));
    }
  }

  /**
   * The defaults.
   *
   * @return coverage 0.95, margin 10 points, 2,000 draws, seed 1, grafters hidden
   */
  public static AnswerOptions defaults() {
    return new AnswerOptions(0.95, 0.10, 2000, 1, Bands.DEFAULT, false, 1);
  }

  /**
   * With another coverage.
   *
   * @param other strictly between 0 and 1
   * @return changed options
   */
  public AnswerOptions withCoverage(double other) {
    return new AnswerOptions(other, margin, draws, seed, bands, grafterNames, priorScale);
  }

  /**
   * With another margin.
   *
   * @param other as a fraction of 1: 0.05 for 5 points
   * @return changed options
   */
  public AnswerOptions withMargin(double other) {
    return new AnswerOptions(coverage, other, draws, seed, bands, grafterNames, priorScale);
  }

  /**
   * With another number of draws.
   *
   * @param other at least 100
   * @return changed options
   */
  public AnswerOptions withDraws(int other) {
    return new AnswerOptions(coverage, margin, other, seed, bands, grafterNames, priorScale);
  }

  /**
   * With another seed.
   *
   * @param other any number
   * @return changed options
   */
  public AnswerOptions withSeed(long other) {
    return new AnswerOptions(coverage, margin, draws, other, bands, grafterNames, priorScale);
  }

  /**
   * With other difficulty bands.
   *
   * @param other thresholds
   * @return changed options
   */
  public AnswerOptions withBands(Bands other) {
    return new AnswerOptions(coverage, margin, draws, seed, other, grafterNames, priorScale);
  }

  /**
   * With grafters named or hidden.
   *
   * @param other true to name them
   * @return changed options
   */
  public AnswerOptions withGrafterNames(boolean other) {
    return new AnswerOptions(coverage, margin, draws, seed, bands, other, priorScale);
  }

  /**
   * With another belief of how much columns that vary differ.
   *
   * @param other logits, above 0, at most 10
   * @return changed options
   */
  public AnswerOptions withPriorScale(double other) {
    return new AnswerOptions(coverage, margin, draws, seed, bands, grafterNames, other);
  }
}
