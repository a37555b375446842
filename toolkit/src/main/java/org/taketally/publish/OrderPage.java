package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.figure.PlanFigures;
import org.taketally.plan.order.BudwoodPlan;
import org.taketally.plan.order.GraftOrder;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Caution;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.wording.BudwoodPlanWords;
import org.taketally.wording.GraftOrderWords;
import org.taketally.wording.pages.BudwoodPageWords;
import org.taketally.wording.pages.OrderPageWords;
import org.taketally.wording.pages.WorkingPageWords;

/** What an order book needs, as a page to print. */
public final class OrderPage {

  private final Page page;

  private OrderPage(Page page) {
    this.page = page;
  }

  /**
   * The page of an order.
   *
   * @param order grafts and sticks line by line
   * @param notes what was supposed, and what there is gives; a paragraph each
   * @return the page
   */
  public static OrderPage of(GraftOrder order, List<String> notes) {
    GraftOrderWords words = GraftOrderWords.of(order);
    List<Section> sections = new ArrayList<>();
    sections.add(
        new Section(
            "in-short",
            WorkingPageWords.IN_SHORT,
            List.of(
                new Callout(words.headline()),
                Bullets.of(words.more()),
                new Caution(WorkingPageWords.WOOD))));
    sections.add(
        new Section(
            "lines",
            OrderPageWords.LINES,
            List.of(
                FigureBlocks.figure(size -> PlanFigures.order(order, size)),
                new Table(
                    new Grid(OrderPageWords.CAPTION, words.headings(), words.table(), true)))));
    if (!notes.isEmpty()) {
      sections.add(new Section("rests-on", OrderPageWords.RESTS_ON, List.of(Bullets.of(notes))));
    }
    return new OrderPage(
        new Page(OrderPageWords.TITLE, OrderPageWords.LEAD, "", sections, WorkingPageWords.FOOTER));
  }

  /**
   * The page of requests for budwood.
   *
   * @param plan what to cut and when
   * @param notes what was supposed, a paragraph each
   * @return the page
   */
  public static OrderPage of(BudwoodPlan plan, List<String> notes) {
    BudwoodPlanWords words = BudwoodPlanWords.of(plan);
    return new OrderPage(
        new Page(
            BudwoodPageWords.TITLE,
            BudwoodPageWords.LEAD,
            "",
            List.of(
                new Section(
                    "in-short",
                    WorkingPageWords.IN_SHORT,
                    List.of(new Callout(words.headline()), Bullets.of(words.more()))),
                new Section(
                    "requests",
                    BudwoodPageWords.REQUESTS,
                    List.of(
                        new Table(
                            new Grid(
                                BudwoodPageWords.caption(plan),
                                words.headings(),
                                words.table(),
                                true)))),
                new Section("rests-on", OrderPageWords.RESTS_ON, List.of(Bullets.of(notes)))),
            WorkingPageWords.FOOTER));
  }

  /**
   * As one file of HTML.
   *
   * @return the page
   */
  public String html() {
    return PageWriter.html(page);
  }
}
