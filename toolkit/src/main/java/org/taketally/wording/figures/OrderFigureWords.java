package org.taketally.wording.figures;

import java.util.List;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.GraftOrder.Line;
import org.taketally.wording.GraftOrderWords;
import org.taketally.wording.Words;

/** The figure of an order in words. */
public final class OrderFigureWords {

  /** What the axis measures. */
  public static final String AXIS = "share of the grafts that end as saleable trees";

  /** The key's word for the mark. */
  public static final String EXPECTED = "expected";

  /** The key's word for the bar. */
  public static final String SEASONS = "8 seasons in 10";

  /** Heading of the counts of the lines. */
  public static final String GRAFTS = "grafts to make";

  private final GraftOrder order;

  /**
   * The words of a figure.
   *
   * @param order the figure shows
   */
  public OrderFigureWords(GraftOrder order) {
    this.order = order;
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    int without = order.unanswered().size();
    if (order.answered().isEmpty()) {
      return "No number of grafts is known for %s"
          .formatted(Words.count(order.treesWanted(), "saleable tree"));
    }
    return "%s for %s%s"
        .formatted(
            Words.count(order.graftsNeeded(), "graft"),
            Words.count(order.treesAnswered(), "saleable tree"),
            without == 0
                ? ""
                : "; %s no answer"
                    .formatted(Words.count(without, "line") + (without == 1 ? " has" : " have")));
  }

  /**
   * What is shown, and how sure the grafts are.
   *
   * @return a few words
   */
  public String subtitle() {
    return "Line by line, with how far seasons move it; each line%s has its trees in %s"
        .formatted(
            order.unanswered().isEmpty() ? "" : " with an answer",
            GraftOrderWords.seasons(order.terms().assurance()));
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    List<String> lines = order.lines().stream().map(this::detail).toList();
    return "%s. %s.".formatted(subtitle(), Lists.words(Lists.ENGLISH, lines));
  }

  /**
   * A line in full.
   *
   * @param line of the order
   * @return a few words
   */
  public String detail(Line line) {
    return "%s: %s of the grafts (%s), %s for %s"
        .formatted(
            GraftOrderWords.name(line.line()),
            Words.percent(line.share()),
            Words.percents(line.shareRange()),
            count(line),
            Words.count(line.line().trees(), "tree"));
  }

  /**
   * Grafts of a line.
   *
   * @param line of the order
   * @return e.g. {@code 120 grafts}
   */
  public String count(Line line) {
    return line.grafts().isPresent()
        ? Words.count(line.grafts().getAsInt(), "graft")
        : GraftOrderWords.TOO_MANY + " grafts";
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return Words.count(left) + " lines between are in the table";
  }
}
