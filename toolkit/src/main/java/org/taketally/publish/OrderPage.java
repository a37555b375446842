package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.plan.order.GraftOrder;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Caution;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.wording.GraftOrderWords;

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
            "In short",
            List.of(
                new Callout(words.headline()),
                Bullets.of(words.more()),
                new Caution(
                    "Before budwood or plants change places, ask what plant health rules and plant"
                        + " variety rights say where you are."))));
    sections.add(
        new Section(
            "lines",
            "Line by line",
            List.of(
                new Table(
                    new Grid(
                        "likely ranges are those of 8 seasons in 10",
                        words.headings(),
                        words.table(),
                        true)))));
    if (!notes.isEmpty()) {
      sections.add(new Section("rests-on", "What this rests on", List.of(Bullets.of(notes))));
    }
    return new OrderPage(
        new Page(
            "Grafts to make and sticks to cut",
            "How many grafts are enough for the order book.",
            "",
            sections,
            "Made with Taketally."));
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
