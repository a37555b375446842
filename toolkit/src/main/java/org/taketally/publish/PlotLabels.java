package org.taketally.publish;

import org.taketally.figure.XmlText;
import org.taketally.plan.layout.LayoutSheet;
import org.taketally.plan.layout.Plot;
import org.taketally.plan.layout.TrialLayout;

/** Labels of a trial's plots to print and cut, three in a row. */
public final class PlotLabels {

  private static final String HEAD =
      """
      <!DOCTYPE html>
      <html lang="en">
      <head>
      <meta charset="utf-8"/>
      <meta name="viewport" content="width=device-width, initial-scale=1"/>
      <title>Labels</title>
      <style>
      body { font-family: system-ui, sans-serif; margin: 1rem; color: #000; background: #fff; }
      ul { display: grid; grid-template-columns: repeat(auto-fill, minmax(60mm, 1fr)); gap: 0; list-style: none; margin: 0; padding: 0; }
      li { border: 1px dashed #767676; padding: 3mm; break-inside: avoid; font-size: 11pt; line-height: 1.35; }
      strong { display: block; font-size: 15pt; }
      @media print { body { margin: 0; } h1, p { display: none; } }
      </style>
      </head>
      <body>
      <h1>Labels</h1>
      <p>One a plot, in the order of work. Write with a pencil or a marker that lasts in the weather.</p>
      <ul>
      """;

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
    StringBuilder html = new StringBuilder(HEAD);
    for (Plot plot : layout.plots()) {
      html.append(
          "<li><strong>%s</strong>%s<br/>on %s<br/>%s, %s%s</li>\n"
              .formatted(
                  sheet.label(plot),
                  XmlText.escape(plot.pairing().cultivar()),
                  XmlText.escape(plot.pairing().rootstock()),
                  XmlText.escape(plot.session().grafter()),
                  XmlText.escape(plot.session().day()),
                  XmlText.escape(plot.bed().map(bed -> ", " + bed).orElse(""))));
    }
    return html.append("</ul>\n</body>\n</html>\n").toString();
  }
}
