package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeFit;
import org.taketally.terms.Interval;

/**
 * Each grafter's take had all grafted the same mix. Shown by letters unless names were asked for.
 *
 * @param grafters highest adjusted take first; empty if the model can't compare them
 * @param named whether {@code shownAs} holds names
 * @param typical typical difference between two grafters, 0 to 1; 0 with fewer than two
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record Grafters(
    List<GrafterTake> grafters,
    boolean named,
    Estimate typical,
    TakeCount tally,
    AnswerOptions options)
    implements Answer {

  static final String QUESTION = "Is it the hand or the wood?";

  public Grafters {
    grafters = List.copyOf(grafters);
  }

  /**
   * One grafter.
   *
   * @param shownAs letter or name
   * @param tally grafts and takes
   * @param counted Wilson interval of the counted take, 0 to 1
   * @param take adjusted take over the mix of all records, 0 to 1
   * @param difference adjusted take minus that of the average grafter, -1 to 1
   */
  public record GrafterTake(
      String shownAs, TakeCount tally, Interval counted, Estimate take, Estimate difference) {}

  /**
   * From a fit in which the grafter varies or is adjusted for.
   *
   * @param fit the fit; without the grafter in its model, the headline says so
   * @param options level, draws, seed, and whether names may be shown
   * @return the comparison
   */
  public static Grafters of(TakeFit fit, AnswerOptions options) {
    return of(new Averaging(fit, options), options);
  }

  static Grafters of(Averaging averaging, AnswerOptions options) {
    return new GraftersCompared(averaging, options).answer();
  }

  @Override
  public String title() {
    return QUESTION;
  }

  @Override
  public String headline() {
    if (grafters.size() < 2) {
      return "These records can't part the hand from the wood: they name fewer than two grafters, or the model leaves them out; %s."
          .formatted(Words.count(tally.grafts(), "graft"));
    }
    return "Swapping the hand typically moves take by %s (likely %s) over these %d grafters, had all grafted the same mix; from %s."
        .formatted(
            Words.points(typical.value()),
            Words.points(typical.interval()),
            grafters.size(),
            Words.count(tally.grafts(), "graft"));
  }

  @Override
  public String text() {
    if (grafters.size() < 2) {
      return headline();
    }
    List<String> lines = new ArrayList<>(List.of(headline()));
    grafters.stream()
        .filter(g -> g.difference().high() < 0)
        .forEach(
            g ->
                lines.add(
                    "%s: %s below the average hand (likely %s), from %s."
                        .formatted(
                            Words.sentence(g.shownAs()),
                            Words.points(g.difference().value()),
                            Words.below(g.difference().interval()),
                            Words.count(g.tally().grafts(), "graft"))));
    if (!named) {
      lines.add("Grafters are shown by letters dealt out at random.");
    }
    lines.add(
        "A lower figure may come from the jobs given to a person, where these weren't recorded.");
    return String.join("\n", lines);
  }

  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "grafters",
            "Grafters, highest adjusted take first",
            AnswerColumn.GRAFTER,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH);
    for (GrafterTake g : grafters) {
      table.row(g.shownAs(), g.tally(), g.counted(), g.take(), g.difference());
    }
    return table.build();
  }
}
