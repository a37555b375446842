package org.taketally.publish;

import java.util.List;
import java.util.Map;
import org.taketally.plan.layout.LayoutSheet;
import org.taketally.plan.layout.Plot;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.wording.pages.BenchSheetWords;

/** Labels of a trial's plots to print and cut, three in a row. */
public final class PlotLabels {

  /** What stands on a label. */
  private record Label(String name, String cultivar, String rootstock, String place) {}

  private PlotLabels() {}

  /**
   * Labels as one file of HTML.
   *
   * @param layout which graft goes where
   * @param site where the trial stands; may be blank
   * @return the page
   */
  public static String html(TrialLayout layout, String site) {
    LayoutSheet sheet = LayoutSheet.of(layout, site);
    List<Label> labels = layout.plots().stream().map(plot -> label(sheet, plot)).toList();
    return PageWriter.write(
        "labels.html.mustache",
        Map.of(
            "title", BenchSheetWords.LABELS,
            "lead", BenchSheetWords.LABELS_LEAD,
            "labels", labels));
  }

  private static Label label(LayoutSheet sheet, Plot plot) {
    String place = plot.session().grafter() + ", " + plot.session().day();
    return new Label(
        sheet.label(plot),
        plot.pairing().cultivar(),
        BenchSheetWords.on(plot.pairing().rootstock()),
        place + plot.bed().map(bed -> ", " + bed).orElse(""));
  }
}
