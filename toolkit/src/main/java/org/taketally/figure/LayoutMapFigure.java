package org.taketally.figure;

import java.util.List;
import java.util.Map;
import org.taketally.plan.layout.LayoutSheet;
import org.taketally.plan.layout.Plot;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.wording.figures.LayoutMapFigureWords;

/** The plots of a layout, session by session, each with its label, cultivar and rootstock. */
final class LayoutMapFigure {

  private static final double WIDE_PLOT = 110;
  private static final double NARROW_PLOT = 84;
  private static final double HEIGHT = 54;
  private static final double GAP = 4;
  private static final double PAD = 6;
  private static final List<String> FILLS = List.of(Palette.PAPER, Palette.SHADE, Palette.RIBBON);

  private final TrialLayout layout;
  private final Sheet sheet;
  private final LayoutSheet labels;
  private final double width;
  private final int perLine;

  private LayoutMapFigure(TrialLayout layout, FigureSize size) {
    this.layout = layout;
    LayoutMapFigureWords words = new LayoutMapFigureWords(layout);
    this.sheet =
        new Sheet(
            size, LayoutMapFigureWords.TITLE, LayoutMapFigureWords.SUBTITLE, words.description());
    this.labels = LayoutSheet.of(layout, "");
    double least = size.narrow() ? NARROW_PLOT : WIDE_PLOT;
    this.perLine = (int) ((sheet.right() - sheet.left() + GAP) / (least + GAP));
    this.width = (sheet.right() - sheet.left() + GAP) / perLine - GAP;
  }

  static String draw(TrialLayout layout, FigureSize size) {
    return new LayoutMapFigure(layout, size).draw();
  }

  private String draw() {
    for (Map.Entry<String, List<Plot>> block : layout.byBlock().entrySet()) {
      sheet.lines(
          Lettering.STRONG, LayoutMapFigureWords.session(block.getKey(), block.getValue().get(0)));
      double top = sheet.y() + GAP;
      List<Plot> plots = block.getValue();
      for (int i = 0; i < plots.size(); i++) {
        plot(
            plots.get(i),
            sheet.left() + (i % perLine) * (width + GAP),
            top + Math.floorDiv(i, perLine) * (HEIGHT + GAP));
      }
      int lines = (plots.size() + perLine - 1) / perLine;
      sheet.moveTo(top + lines * (HEIGHT + GAP) + 2 * GAP);
    }
    return sheet.svg();
  }

  private void plot(Plot plot, double x, double y) {
    int stock = layout.plan().rootstocks().indexOf(plot.pairing().rootstock());
    double room = width - 2 * PAD;
    String bed = plot.bed().map(name -> ", " + name).orElse("");
    sheet.add(
        SvgElement.rectangle(x, y, width, HEIGHT)
            .with("fill", FILLS.get(stock % FILLS.size()))
            .with("stroke", Palette.SOFT_INK),
        Lettering.QUIET.at(
            x + PAD,
            y + 15,
            Lettering.QUIET.fit(labels.label(plot) + " × " + plot.grafts() + bed, room)),
        Lettering.BODY.at(x + PAD, y + 31, Lettering.BODY.fit(plot.pairing().cultivar(), room)),
        Lettering.QUIET.at(x + PAD, y + 47, Lettering.QUIET.fit(plot.pairing().rootstock(), room)));
  }
}
