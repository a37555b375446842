package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.taketally.figure.PlanFigures;
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
import org.taketally.wording.pages.BenchSheetWords;
import org.taketally.wording.pages.WorkingPageWords;

/** The sheet a trial is grafted by: a table a session, in the order of work, with room to write. */
public final class BenchSheet {

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
            WorkingPageWords.IN_SHORT,
            List.of(
                new Callout(words.headline()),
                Bullets.of(points),
                new Caution(BenchSheetWords.KNIVES),
                new Caution(WorkingPageWords.WOOD))));
    sections.add(
        new Section(
            "map",
            BenchSheetWords.MAP,
            List.of(FigureBlocks.figure(size -> PlanFigures.layout(layout, size)))));
    LayoutSheet labels = LayoutSheet.of(layout, site);
    for (Map.Entry<String, List<Plot>> block : layout.byBlock().entrySet()) {
      sections.add(session(block.getKey(), block.getValue(), labels));
    }
    return new BenchSheet(
        new Page(
            BenchSheetWords.TITLE,
            BenchSheetWords.lead(site),
            "",
            sections,
            BenchSheetWords.footer(layout.plan().seed())));
  }

  private static Section session(String block, List<Plot> plots, LayoutSheet labels) {
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
    Plot first = plots.get(0);
    Grid grid =
        new Grid(
            BenchSheetWords.CAPTION, BenchSheetWords.headings(first.bed().isPresent()), rows, true);
    return new Section(
        "session-" + block, BenchSheetWords.session(block, first), List.of(new Table(grid)));
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
