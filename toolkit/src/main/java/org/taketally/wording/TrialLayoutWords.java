package org.taketally.wording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.taketally.answers.verdict.Verdict;
import org.taketally.plan.layout.LayoutKind;
import org.taketally.plan.layout.Pairing;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.size.VerdictChances;

/** A layout in words. */
public final class TrialLayoutWords {

  private final TrialLayout layout;

  private TrialLayoutWords(TrialLayout layout) {
    this.layout = layout;
  }

  /**
   * The words for a layout.
   *
   * @param layout which graft goes where
   * @return the words
   */
  public static TrialLayoutWords of(TrialLayout layout) {
    return new TrialLayoutWords(layout);
  }

  /**
   * What the layout is.
   *
   * @return one sentence
   */
  public String headline() {
    return "%s: %s in %s, %s each, in %s of one hand on one day."
        .formatted(
            kind(layout.kind()),
            Words.count(layout.grafts(), "graft"),
            Words.count(layout.plots().size(), "plot"),
            Words.count(layout.plan().graftsPerPlot(), "graft"),
            Words.count(layout.byBlock().size(), "session"));
  }

  private static String kind(LayoutKind kind) {
    return switch (kind) {
      case COMPLETE_BLOCKS -> "Every pairing in every session, in an order drawn by lot";
      case LATIN_SQUARE -> "A Latin square, every pairing once with each grafter and once a day";
      case BALANCED_INCOMPLETE_BLOCKS ->
          "Balanced sessions, every two pairings side by side equally often";
      case RESOLVABLE_INCOMPLETE_BLOCKS ->
          "Sessions in groups, each group holding every pairing once, so that the trial can be"
              + " broken off after any group";
      case INCOMPLETE_BLOCKS -> "Sessions that hold part of the pairings each, the best mix found";
      case SPLIT_PLOT ->
          "Stocks by the bed, one bed of each in every session, all cultivars in each bed";
    };
  }

  /**
   * What it can compare, and what to mind.
   *
   * @return a paragraph each
   */
  public List<String> more() {
    List<String> more = new ArrayList<>();
    more.add(precision());
    if (layout.kind() == LayoutKind.SPLIT_PLOT) {
      more.add(
          "Rootstocks are compared bed with bed: there are %d beds of each, and that number, not the grafts, decides how small a difference can be seen."
              .formatted(layout.byBlock().size()));
    }
    more.add("Grafts by rootstock: " + counts(layout.grafts(Pairing::rootstock)) + ".");
    more.add("Grafts by cultivar: " + counts(layout.grafts(Pairing::cultivar)) + ".");
    more.add(
        "Keep to the order of the sheet: it was drawn by lot (seed %d), and the comparison rests on that. If you can, let someone count the takes who doesn't know which stock is which."
            .formatted(layout.plan().seed()));
    return more;
  }

  private String precision() {
    if (layout.pairings().worst() == 0) {
      return "Some pairings are never in one session with others, not even by way of a third: they"
          + " can't be compared. Add sessions or longer ones.";
    }
    if (layout.pairings().worst() > 1 - 1e-9) {
      return "No comparison loses anything to differences between sessions.";
    }
    String stocks =
        layout
            .rootstocks()
            .map(
                e ->
                    " Rootstocks, over all cultivars, keep %s (worst pair %s)."
                        .formatted(Words.percent(e.average()), Words.percent(e.worst())))
            .orElse("");
    String most =
        layout.atBest().isPresent()
            ? "; no such layout can keep more than %s on average"
                .formatted(Words.percent(layout.atBest().getAsDouble()))
            : "";
    return "Because sessions don't hold every pairing, a comparison of two pairings keeps %s of what complete sessions with the same grafts would tell (worst pair %s%s).%s"
        .formatted(
            Words.percent(layout.pairings().average()),
            Words.percent(layout.pairings().worst()),
            most,
            stocks);
  }

  private static String counts(Map<String, Integer> counts) {
    return counts.entrySet().stream()
        .map(e -> e.getKey() + " " + Words.count(e.getValue()))
        .collect(Collectors.joining(", "));
  }

  /**
   * What the trial would be likely to say.
   *
   * @param chances from trials made up
   * @return one paragraph
   */
  public static String chances(VerdictChances chances) {
    String each =
        Arrays.stream(Verdict.values())
            .filter(verdict -> chances.chance(verdict) > 0)
            .map(
                verdict ->
                    "\"%s\" %s"
                        .formatted(Names.of(verdict), Words.percent(chances.chance(verdict))))
            .collect(Collectors.joining(", "));
    String none =
        chances.unanswered() == 0
            ? ""
            : ", no answer " + Words.percent((double) chances.unanswered() / chances.trials());
    return "If that were true, the verdict would be: %s%s. Settled one way or the other: %s (give or take %s; from %s made up and analysed like your records)."
        .formatted(
            each,
            none,
            Words.percent(chances.settled()),
            Words.points(chances.uncertainty(chances.settled())),
            Words.count(chances.trials(), "trial"));
  }

  /**
   * What is supposed of all that isn't planned.
   *
   * @return one sentence
   */
  public static String supposed() {
    return "Supposed beside it: cultivars, hands, days and beds that differ as is usual (common"
        + " practice, no source).";
  }
}
