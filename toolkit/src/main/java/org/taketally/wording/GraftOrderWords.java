package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.GraftOrder.Line;
import org.taketally.plan.order.OrderLine;

/** An order in words. */
public final class GraftOrderWords {

  /** Where no number of grafts gives a line the certainty asked for. */
  public static final String NONE_ENOUGH = "none is enough";

  private final GraftOrder order;

  private GraftOrderWords(GraftOrder order) {
    this.order = order;
  }

  /**
   * The words for an order.
   *
   * @param order grafts and sticks line by line
   * @return the words
   */
  public static GraftOrderWords of(GraftOrder order) {
    return new GraftOrderWords(order);
  }

  /**
   * What to make and cut.
   *
   * @return one sentence
   */
  public String headline() {
    return "For %s: make %s from %s, then each line has its trees in %s seasons of 10.%s"
        .formatted(
            Words.count(order.treesWanted(), "saleable tree"),
            Words.count(order.graftsNeeded(), "graft"),
            Words.count(order.sticksNeeded(), "stick"),
            tenths(order.terms().assurance()),
            cost().map(money -> " The grafts cost %s.".formatted(money)).orElse(""));
  }

  /**
   * A chance as seasons of ten.
   *
   * @param chance 0 to 1
   * @return e.g. {@code 9} or {@code 7.4}
   */
  public static String tenths(double chance) {
    double tenths = Math.round(chance * 100) / 10.0;
    return tenths == Math.rint(tenths)
        ? String.valueOf((int) tenths)
        : String.format(Locale.ROOT, "%.1f", tenths);
  }

  private Optional<String> cost() {
    if (order.terms().costPerGraft().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(money(order.graftsNeeded() * order.terms().costPerGraft().getAsDouble()));
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, "%,.2f", amount);
  }

  /**
   * What to mind.
   *
   * @return a paragraph each
   */
  public List<String> more() {
    List<String> more = new ArrayList<>();
    order.lines().stream()
        .filter(line -> line.grafts().isEmpty())
        .forEach(
            line ->
                more.add(
                    "%s: no number of grafts makes this line as sure as that; promise fewer trees, or be content with a lower chance."
                        .formatted(name(line.line()))));
    if (order.probabilityOfAll().isPresent() && order.lines().size() > 1) {
      more.add(
          "All %d lines together are complete in about %s seasons of 10, as a bad season is bad for all of them."
              .formatted(order.lines().size(), tenths(order.probabilityOfAll().getAsDouble())));
    }
    more.add(byRate());
    order
        .riskiest()
        .ifPresent(
            line ->
                more.add(
                    "The riskiest line is %s: made by the rate (%s), it would be short of %s of its trees in the worst season of ten."
                        .formatted(
                            name(line.line()),
                            Words.count(line.byRate(), "graft"),
                            Words.percent(line.shortInBadSeason()))));
    more.add(
        "Grafts are counted until the tree is saleable as far as a late loss was stated. Check that"
            + " you may multiply a protected cultivar before you order or cut wood.");
    return more;
  }

  private String byRate() {
    double worst = order.lines().stream().mapToDouble(Line::probabilityByRate).min().orElse(0);
    double best = order.lines().stream().mapToDouble(Line::probabilityByRate).max().orElse(0);
    String chance =
        Words.percent(worst).equals(Words.percent(best))
            ? Words.percent(worst)
            : "%s to %s".formatted(Words.percent(worst), Words.percent(best));
    return "Trees divided by the take (%s in all) would be enough with a chance of %s only."
        .formatted(
            Words.count(order.lines().stream().mapToLong(Line::byRate).sum(), "graft"), chance);
  }

  /**
   * A line's name.
   *
   * @param line of the book
   * @return e.g. {@code Orrin on Halden seedling}
   */
  public static String name(OrderLine line) {
    return line.cultivar() + line.rootstock().map(stock -> " on " + stock).orElse("");
  }

  /**
   * Headings of {@link #table}.
   *
   * @return one a column
   */
  public List<String> headings() {
    List<String> headings =
        new ArrayList<>(
            List.of(
                "Line",
                "Due",
                "Trees wanted",
                "Saleable of the grafts",
                "Grafts to make",
                "Sticks to cut",
                "Trees to expect"));
    if (order.terms().costPerGraft().isPresent()) {
      headings.add("Cost");
    }
    return headings;
  }

  /**
   * One row a line, and the total.
   *
   * @return texts
   */
  public List<List<String>> table() {
    List<List<String>> rows = new ArrayList<>();
    order.lines().forEach(line -> rows.add(row(line)));
    List<String> total =
        new ArrayList<>(
            List.of(
                "All",
                "",
                Words.count(order.treesWanted()),
                "",
                Words.count(order.graftsNeeded()),
                Words.count(order.sticksNeeded()),
                ""));
    cost().ifPresent(total::add);
    rows.add(total);
    return rows;
  }

  private List<String> row(Line line) {
    List<String> row =
        new ArrayList<>(
            List.of(
                name(line.line()),
                line.line().due().map(Object::toString).orElse(""),
                Words.count(line.line().trees()),
                "about %s (%s)"
                    .formatted(Words.percent(line.share()), Words.percents(line.shareRange())),
                line.grafts().isPresent() ? Words.count(line.grafts().getAsInt()) : NONE_ENOUGH,
                line.sticks().isPresent() ? Words.count(line.sticks().getAsInt()) : "–",
                line.trees().map(GraftOrderWords::range).orElse("–")));
    if (order.terms().costPerGraft().isPresent()) {
      row.add(line.cost().isPresent() ? money(line.cost().getAsDouble()) : "–");
    }
    return row;
  }

  private static String range(GraftOrder.TreeRange trees) {
    return "%s (%s to %s)"
        .formatted(
            Words.count(Math.round(trees.expected())),
            Words.count(trees.low()),
            Words.count(trees.high()));
  }

  /**
   * That nothing is recorded of a cultivar or stock.
   *
   * @param name of it
   * @return one sentence
   */
  public static String unknown(String name) {
    return "There are no records of %s: what it may do is taken from how far others differ, so its line needs many grafts to be sure. A spelling other than that of the records would look the same."
        .formatted(name);
  }

  /**
   * What a fixed number of grafts gives.
   *
   * @param line of the book
   * @param grafts grafts there can be
   * @param trees what they give
   * @param chance that they give the trees wanted, 0 to 1
   * @return one sentence
   */
  public static String fixed(
      OrderLine line, int grafts, GraftOrder.TreeRange trees, double chance) {
    return "%s: %s give about %s (%s to %s in 8 seasons of 10); the %s wanted with a chance of %s."
        .formatted(
            name(line),
            Words.count(grafts, "graft"),
            Words.count(Math.round(trees.expected()), "tree"),
            Words.count(trees.low()),
            Words.count(trees.high()),
            Words.count(line.trees()),
            Words.chance(chance));
  }
}
