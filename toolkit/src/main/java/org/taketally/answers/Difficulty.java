package org.taketally.answers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeFit;
import org.taketally.terms.Interval;

/**
 * How hard each cultivar is to get to take, other things being equal.
 *
 * @param cultivars hardest first
 * @param standard the standard conditions in words
 * @param tally grafts and takes behind it
 * @param options level and band thresholds used
 */
public record Difficulty(
    List<CultivarTake> cultivars, String standard, TakeCount tally, AnswerOptions options)
    implements Answer {

  static final String QUESTION = "Which cultivars are hard to get to take?";

  private static final int MOST_HARDEST = 10;
  private static final int MOST_NAMES = 30;

  public Difficulty {
    cultivars = List.copyOf(cultivars);
  }

  /**
   * One cultivar.
   *
   * @param cultivar name
   * @param tally its grafts and takes
   * @param counted Wilson interval of the counted take, 0 to 1
   * @param standardTake adjusted take under the standard conditions, 0 to 1
   * @param take adjusted take averaged over the conditions of all records, 0 to 1
   * @param drawnIn how far the estimate was drawn toward the middle, 0 not at all to 1 wholly
   * @param rank median rank with its likely range, 1 is the hardest
   * @param chanceHardestQuarter chance of being among the hardest quarter, 0 to 1
   * @param band easy, middling, hard or can't tell
   */
  public record CultivarTake(
      String cultivar,
      TakeCount tally,
      Interval counted,
      Estimate standardTake,
      Estimate take,
      double drawnIn,
      Estimate rank,
      double chanceHardestQuarter,
      Band band) {}

  /**
   * Works it out from a fit.
   *
   * @param fit a fit in which {@code cultivar} varies or is adjusted for
   * @param options level, draws, seed, bands
   * @return the answer
   * @throws IllegalArgumentException if the fit doesn't know cultivars
   */
  public static Difficulty of(TakeFit fit, AnswerOptions options) {
    return Difficulties.of(new Averaging(fit, options), options);
  }

  @Override
  public String title() {
    return QUESTION;
  }

  @Override
  public String headline() {
    String from = ", from " + Words.count(tally.grafts(), "graft") + ".";
    if (cultivars.size() == 1) {
      return "These records hold one cultivar only: %s takes %s"
              .formatted(cultivars.get(0).cultivar(), Words.take(cultivars.get(0).take()))
          + from;
    }
    List<CultivarTake> hardest =
        cultivars.stream().filter(c -> c.chanceHardestQuarter() >= options.bands().sure()).toList();
    if (hardest.isEmpty()) {
      CultivarTake low = cultivars.get(0);
      CultivarTake high = cultivars.get(cultivars.size() - 1);
      return "No cultivar of the %d surely belongs to the hardest quarter: estimates run from %s %s to %s %s"
              .formatted(
                  cultivars.size(),
                  low.cultivar(),
                  Words.take(low.take()),
                  high.cultivar(),
                  Words.take(high.take()))
          + from;
    }
    return "Hardest of %d cultivars: %s"
            .formatted(
                cultivars.size(),
                Words.first(
                    hardest.stream()
                        .map(c -> c.cultivar() + " takes " + Words.take(c.take()))
                        .toList(),
                    MOST_HARDEST))
        + from;
  }

  @Override
  public String text() {
    List<String> lines = new ArrayList<>(List.of(headline()));
    for (Band band : Band.values()) {
      List<String> names =
          cultivars.stream().filter(c -> c.band() == band).map(CultivarTake::cultivar).toList();
      if (!names.isEmpty()) {
        lines.add(bandLine(band) + ": " + Words.first(names, MOST_NAMES) + ".");
      }
    }
    lines.add(
        "Takes are what each cultivar would have shown in the mix of conditions of all these records;"
            + " \"standard\" means "
            + standard
            + ".");
    cultivars.stream()
        .max(Comparator.comparingDouble(CultivarTake::drawnIn))
        .filter(c -> c.drawnIn() >= 0.3)
        .ifPresent(
            c ->
                lines.add(
                    "Few grafts say little, so estimates are drawn toward the middle: that of %s, with %s, by %s of the way."
                        .formatted(
                            c.cultivar(),
                            Words.count(c.tally().grafts(), "graft"),
                            Words.percent(c.drawnIn()))));
    lines.add(
        "Take at assessment is not the tree's later health, nor its yield: a graft that took can"
            + " still fail in later years.");
    return String.join("\n", lines);
  }

  private String bandLine(Band band) {
    AnswerOptions.Bands limits = options.bands();
    String sure = "at least " + Words.percent(limits.sure()) + " sure";
    String hardBelow = Words.percent(limits.hardBelow());
    String easyFrom = Words.percent(limits.easyFrom());
    return switch (band) {
      case EASY -> "Easy (%s: %s or more)".formatted(sure, easyFrom);
      case MIDDLING -> "Middling (%s: %s to %s)".formatted(sure, hardBelow, easyFrom);
      case HARD -> "Hard (%s: under %s)".formatted(sure, hardBelow);
      case CANT_TELL -> "Can't tell (too near a limit to be that sure)";
    };
  }

  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "difficulty",
            "Cultivars, hardest first",
            AnswerColumn.CULTIVAR,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.STANDARD_TAKE,
            AnswerColumn.STANDARD_LOW,
            AnswerColumn.STANDARD_HIGH,
            AnswerColumn.DRAWN_IN,
            AnswerColumn.RANK,
            AnswerColumn.RANK_LOW,
            AnswerColumn.RANK_HIGH,
            AnswerColumn.HARDEST_QUARTER,
            AnswerColumn.BAND);
    for (CultivarTake c : cultivars) {
      table.row(
          c.cultivar(),
          c.tally(),
          c.counted(),
          c.take(),
          c.standardTake(),
          c.drawnIn(),
          c.rank(),
          c.chanceHardestQuarter(),
          c.band().words());
    }
    return table.build();
  }
}
