package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.taketally.plan.layout.LayoutSheet;
import org.taketally.plan.layout.Plot;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Caution;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.wording.TrialLayoutWords;

/** The sheet a trial is grafted by: a table a session, in the order of work, with room to write. */
public final class BenchSheet {

  private static final String KNIVES =
      "Grafting knives are sharp: cut away from yourself, never catch a falling knife, stop when"
          + " tired or cold. Clean blades as the label of your disinfectant says, one product at a"
          + " time, never mixed.";
  private static final String WOOD =
      "Before budwood or plants change places, ask what plant health rules and plant variety rights"
          + " say where you are.";

  private final Page page;

  private BenchSheet(Page page) {
    this.page = page;
  }

  /**
   * The sheet of a layout.
   *
   * @param layout which graft goes where
   * @param site where the trial stands; may be blank
   * @return the sheet
   */
  public static BenchSheet of(TrialLayout layout, String site) {
    TrialLayoutWords words = TrialLayoutWords.of(layout);
    List<Section> sections = new ArrayList<>();
    List<String> points = new ArrayList<>(words.more());
    sections.add(
        new Section(
            "in-short",
            "In short",
            List.of(
                new Callout(words.headline()),
                Bullets.of(points),
                new Caution(KNIVES),
                new Caution(WOOD))));
    LayoutSheet labels = LayoutSheet.of(layout, site);
    for (Map.Entry<String, List<Plot>> block : layout.byBlock().entrySet()) {
      sections.add(session(block.getKey(), block.getValue(), labels));
    }
    return new BenchSheet(
        new Page(
            "Bench sheet",
            site.isBlank() ? "Work down each table." : site + ". Work down each table.",
            "",
            sections,
            "Made with Taketally, seed " + layout.plan().seed() + "."));
  }

  private static Section session(String block, List<Plot> plots, LayoutSheet labels) {
    boolean beds = plots.get(0).bed().isPresent();
    List<String> headings =
        new ArrayList<>(
            List.of("Label", "Cultivar", "Rootstock", "Grafts", "Done", "Takes", "Notes"));
    if (beds) {
      headings.add(1, "Bed");
    }
    List<List<String>> rows = new ArrayList<>();
    for (Plot plot : plots) {
      List<String> row =
          new ArrayList<>(
              List.of(
                  labels.label(plot),
                  plot.pairing().cultivar(),
                  plot.pairing().rootstock(),
                  String.valueOf(plot.grafts()),
                  "☐",
                  "____",
                  ""));
      plot.bed().ifPresent(bed -> row.add(1, bed));
      rows.add(row);
    }
    String title =
        "Session %s: %s, %s"
            .formatted(block, plots.get(0).session().grafter(), plots.get(0).session().day());
    String caption = "Grafted on ____________   Counted on ____________";
    return new Section(
        "session-" + block, title, List.of(new Table(new Grid(caption, headings, rows, true))));
  }

  /**
   * As one file of HTML to print.
   *
   * @return the page
   */
  public String html() {
    return PageWriter.html(page);
  }
}
