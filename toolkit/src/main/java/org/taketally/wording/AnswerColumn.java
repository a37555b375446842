package org.taketally.wording;

import java.util.Locale;
import org.taketally.answers.verdict.VerdictRules;

/**
 * Every column any answer table may have: one word, one meaning. docs/answer-columns.md lists them.
 *
 * <p>Takes, differences of takes and chances are fractions of 1 in CSV, JSON and Tablesaw; text and
 * HTML show them as percentages and points.
 */
public enum AnswerColumn {
  FACTOR(Kind.NAME, "Factor", "the column of the records a row is about"),
  LEVEL(Kind.NAME, "Level", "one value of that column"),
  OTHER_LEVEL(Kind.NAME, "Compared with", "the level it is compared with"),
  CULTIVAR(Kind.NAME, "Cultivar", "the scion's cultivar"),
  ROOTSTOCK(Kind.NAME, "Rootstock", "the stock it was grafted on"),
  GRAFTER(Kind.NAME, "Grafter", "who grafted; a letter unless names were asked for"),
  SEASON(Kind.NAME, "Season", "the season"),
  SITE(Kind.NAME, "Site", "the site"),
  BLOCK(Kind.NAME, "Block", "the block, bed or tray of the site"),
  COMPARISON(Kind.WORDS, "What is compared", "the comparison in words"),
  CONTRAST(Kind.NAME, "Contrast", "the comparison planned in advance, as it was named"),
  VERDICT(Kind.WORDS, "Verdict", "what can be said of it, one of seven"),
  GRAFTS(Kind.COUNT, "Grafts", "grafts assessed"),
  TAKES(Kind.COUNT, "Takes", "grafts alive at assessment"),
  LEVELS(Kind.COUNT, "Levels", "how many levels the factor has in these records"),
  RAW_TAKE(Kind.TAKE, "Counted take", "takes divided by grafts, nothing adjusted"),
  RAW_LOW(Kind.TAKE, "Counted, low", "lower Wilson limit of the counted take"),
  RAW_HIGH(Kind.TAKE, "Counted, high", "upper Wilson limit of the counted take"),
  TAKE(Kind.TAKE, "Take", "adjusted take, averaged over the conditions in the records"),
  TAKE_LOW(Kind.TAKE, "Take, low", "lower end of the likely range of the adjusted take"),
  TAKE_HIGH(Kind.TAKE, "Take, high", "upper end of the likely range of the adjusted take"),
  STANDARD_TAKE(Kind.TAKE, "Standard take", "adjusted take under the stated standard conditions"),
  STANDARD_LOW(Kind.TAKE, "Standard, low", "lower end of its likely range"),
  STANDARD_HIGH(Kind.TAKE, "Standard, high", "upper end of its likely range"),
  EXPECTED_TAKE(Kind.TAKE, "Expected take", "take expected from the rest of the model alone"),
  DRAWN_IN(
      Kind.SHARE,
      "Drawn in",
      "how far the estimate was drawn toward the middle: 0 not at all, 1 wholly"),
  RANK(Kind.NUMBER, "Rank", "median rank, 1 is the hardest"),
  RANK_LOW(Kind.NUMBER, "Rank, low", "lower end of the likely range of the rank"),
  RANK_HIGH(Kind.NUMBER, "Rank, high", "upper end of the likely range of the rank"),
  HARDEST_QUARTER(Kind.SHARE, "Hardest quarter", "chance of being among the hardest quarter"),
  BAND(Kind.WORDS, "Band", "easy, middling, hard or can't tell"),
  DIFFERENCE(Kind.POINTS, "Difference", "difference in take"),
  DIFFERENCE_LOW(Kind.POINTS, "Difference, low", "lower end of its likely range"),
  DIFFERENCE_HIGH(Kind.POINTS, "Difference, high", "upper end of its likely range"),
  EQUIVALENCE_LOW(
      Kind.POINTS,
      "Equivalence, low",
      "lower limit of the range that decides equivalence (%s)"
          .formatted(Words.percent(VerdictRules.ALONE))),
  EQUIVALENCE_HIGH(Kind.POINTS, "Equivalence, high", "upper limit of that range"),
  EQUIVALENT(Kind.FLAG, "Within margin", "whether the pair was shown to differ by less than that"),
  CHANCE_BEYOND_MARGIN(
      Kind.SHARE, "Beyond margin", "chance that the difference exceeds the margin"),
  COMPARED(Kind.FLAG, "Compared", "whether it is the factor the question is about"),
  SHARE(Kind.SHARE, "Share", "share of the whole"),
  SHARE_HERE(Kind.SHARE, "Share here", "share of the level's grafts that have it"),
  SHARE_ELSEWHERE(Kind.SHARE, "Share elsewhere", "share of all other grafts that have it"),
  SHARE_ALONE(
      Kind.SHARE,
      "Share alone",
      "share of the level's grafts at levels of the column that no other graft has"),
  STANDS_OUT(Kind.FLAG, "Stands out", "whether this level is what makes the factor matter"),
  LARGEST(Kind.POINTS, "Largest", "difference in take between the best and the worst level"),
  LARGEST_LOW(Kind.POINTS, "Largest, low", "lower end of its likely range"),
  LARGEST_HIGH(Kind.POINTS, "Largest, high", "upper end of its likely range"),
  BEST(Kind.NAME, "Best", "the level with the highest take"),
  WORST(Kind.NAME, "Worst", "the level with the lowest take"),
  VALUE(Kind.NUMBER, "Value", "the number on the horizontal axis, in the unit of its column"),
  VALUE_FROM(Kind.NUMBER, "From", "start of a range of values, included"),
  VALUE_TO(Kind.NUMBER, "To", "end of a range of values"),
  THIN(Kind.FLAG, "Thin", "whether too few grafts lie near to trust the figure"),
  FLAGGED(Kind.FLAG, "Flagged", "whether the row is on the short list"),
  CHANCE_WORSE(
      Kind.SHARE, "Chance worse", "chance that it takes worse than expected by over the margin"),
  TERM(Kind.NAME, "Term", "the part of the model"),
  ESTIMATE(Kind.NUMBER, "Estimate", "the estimate on the logit scale"),
  STANDARD_ERROR(Kind.NUMBER, "Standard error", "its standard error, logits"),
  STANDARD_DEVIATION(Kind.NUMBER, "Spread", "standard deviation between levels, logits"),
  MODE(Kind.NUMBER, "Effect", "effect of the level, logits"),
  CONDITIONAL_SD(Kind.NUMBER, "Effect's sd", "its standard deviation given the spreads, logits"),
  LOW(Kind.NUMBER, "Low", "lower end of the likely range"),
  HIGH(Kind.NUMBER, "High", "upper end of the likely range"),
  STATISTIC(Kind.NUMBER, "Statistic", "value of the test statistic"),
  DEGREES(Kind.NUMBER, "Degrees of freedom", "degrees of freedom of the test"),
  P_VALUE(Kind.NUMBER, "P", "how often chance alone gives a statistic this large"),
  METHOD(Kind.WORDS, "Method", "how a figure was worked out"),
  CHECK(Kind.WORDS, "Check", "what was checked"),
  STATE(Kind.WORDS, "State", "fine, look or wrong"),
  FINDING(Kind.WORDS, "Finding", "what was found, in words"),
  REMEDY(Kind.WORDS, "Remedy", "what to do about it"),
  MODEL(Kind.NAME, "Model", "the way of predicting a row is about"),
  LOG_SCORE(Kind.NUMBER, "Log score", "mean log probability given to what happened; higher better"),
  BRIER(Kind.NUMBER, "Brier score", "mean squared error of the predicted chance; lower better"),
  CALIBRATION_SLOPE(Kind.NUMBER, "Calibration slope", "1 if predicted chances are as wide as real"),
  RANK_AGREEMENT(
      Kind.NUMBER, "Rank agreement", "Spearman correlation with this model's cultivar ranks"),
  PREDICTED(Kind.TAKE, "Predicted", "mean predicted take"),
  EFFICIENCY(Kind.SHARE, "Efficiency", "share of the comparison's information left"),
  COMPARED_WITHIN(Kind.NAME, "Within", "the factor that is allowed for"),
  REFUSES(Kind.FLAG, "Refused", "whether a comparison that was asked for is impossible"),
  EARLY_TAKE(Kind.TAKE, "Early take", "share counted alive at the first count"),
  EARLY_LOW(Kind.TAKE, "Early, low", "lower Wilson limit of the early take"),
  EARLY_HIGH(Kind.TAKE, "Early, high", "upper Wilson limit of the early take"),
  LATE_STARTERS(Kind.COUNT, "Late starters", "grafts not counted alive at first, but later"),
  LOST(Kind.COUNT, "Lost later", "grafts alive at one count and not at a later one"),
  FINAL_TAKE(Kind.TAKE, "Final take", "share counted alive at the last count"),
  FINAL_LOW(Kind.TAKE, "Final, low", "lower Wilson limit of the final take"),
  FINAL_HIGH(Kind.TAKE, "Final, high", "upper Wilson limit of the final take"),
  LATE_LOSS(Kind.SHARE, "Late loss", "share lost by the last round of counts, of those once alive"),
  LATE_LOSS_LOW(Kind.SHARE, "Late loss, low", "lower end of its likely range"),
  LATE_LOSS_HIGH(Kind.SHARE, "Late loss, high", "upper end of its likely range"),
  TIMES_AS_FAST(
      Kind.NUMBER,
      "Times as fast",
      "how many times as fast grafts are lost as those of the base level"),
  TIMES_LOW(Kind.NUMBER, "Times, low", "lower end of its likely range"),
  TIMES_HIGH(Kind.NUMBER, "Times, high", "upper end of its likely range"),
  AT_RISK(Kind.COUNT, "Watched", "grafts alive and counted up to then"),
  STILL_ALIVE(Kind.SHARE, "Still alive", "share still alive, of those once alive"),
  STILL_ALIVE_LOW(Kind.SHARE, "Still alive, low", "lower end of its likely range"),
  STILL_ALIVE_HIGH(Kind.SHARE, "Still alive, high", "upper end of its likely range"),
  MARGIN(Kind.POINTS, "Margin", "the difference that would change what you do"),
  COST_PER_TREE(Kind.NUMBER, "Cost per tree", "cost of one saleable tree, in the user's money"),
  DEARER_BY(Kind.SHARE, "Dearer by", "share that a tree costs more than without the drop"),
  LEFT_PER_GRAFT(Kind.NUMBER, "Left per graft", "what a graft made leaves once its trees are sold"),
  OTHER_GRAFTS(Kind.COUNT, "Grafts, compared", "grafts of the level it is compared with"),
  OTHER_TAKES(Kind.COUNT, "Takes, compared", "takes of the level it is compared with"),
  OTHER_RAW_TAKE(Kind.TAKE, "Counted, compared", "counted take of the level it is compared with"),
  ODDS_RATIO(Kind.NUMBER, "Odds ratio", "odds of taking against those of the level compared with"),
  ODDS_RATIO_LOW(Kind.NUMBER, "Odds ratio, low", "lower end of its likely range"),
  ODDS_RATIO_HIGH(Kind.NUMBER, "Odds ratio, high", "upper end of its likely range");

  /** What a column holds, which decides how it is shown. */
  public enum Kind {
    /** A name as the records spell it. */
    NAME,
    /** A word or a sentence. */
    WORDS,
    /** A whole number. */
    COUNT,
    /** A take, 0 to 1, shown as a percentage. */
    TAKE,
    /** A share or chance, 0 to 1, shown as a percentage. */
    SHARE,
    /** A difference of takes, -1 to 1, shown in points. */
    POINTS,
    /** Any other number. */
    NUMBER,
    /** Yes or no. */
    FLAG
  }

  private final Kind kind;
  private final String heading;
  private final String meaning;

  AnswerColumn(Kind kind, String heading, String meaning) {
    this.kind = kind;
    this.heading = heading;
    this.meaning = meaning;
  }

  /**
   * The name in CSV and Tablesaw.
   *
   * @return lower case with underscores, e.g. {@code take_low}
   */
  public String columnName() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The key in JSON.
   *
   * @return camel case, e.g. {@code takeLow}
   */
  public String key() {
    return camelCase(columnName());
  }

  static String camelCase(String underscored) {
    StringBuilder key = new StringBuilder();
    for (String word : underscored.split("_")) {
      key.append(
          key.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
    }
    return key.toString();
  }

  /**
   * What it holds.
   *
   * @return the kind
   */
  public Kind kind() {
    return kind;
  }

  /**
   * The heading in text and HTML.
   *
   * @return a few words
   */
  public String heading() {
    return heading;
  }

  /**
   * What it means.
   *
   * @return one phrase
   */
  public String meaning() {
    return meaning;
  }
}
