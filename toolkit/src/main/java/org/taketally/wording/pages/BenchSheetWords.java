package org.taketally.wording.pages;

import java.util.ArrayList;
import java.util.List;
import org.taketally.plan.layout.Plot;

/** The sheet a trial is grafted by, and its labels, in words. */
public final class BenchSheetWords {

  /** Title of the sheet. */
  public static final String TITLE = "Bench sheet";

  /** Caption of a session's table, with room to write. */
  public static final String CAPTION = "Grafted on ____________   Counted on ____________";

  /** Caution where knives are used. */
  public static final String KNIVES =
      "Grafting knives are sharp: cut away from yourself, never catch a falling knife, stop when"
          + " tired or cold. Clean blades as the label of your disinfectant says, one product at a"
          + " time, never mixed.";

  /** Title of the labels. */
  public static final String LABELS = "Labels";

  /** How to write on the labels. */
  public static final String LABELS_LEAD =
      "One a plot, in the order of work. Write with a pencil or a marker that lasts in the"
          + " weather.";

  /** Heading of the map. */
  public static final String MAP = "The map";

  private BenchSheetWords() {}

  /**
   * How to use the sheet.
   *
   * @param site where the trial stands; may be blank
   * @return a sentence, after the site if there is one
   */
  public static String lead(String site) {
    return site.isBlank() ? "Work down each table." : site + ". Work down each table.";
  }

  /**
   * The last line.
   *
   * @param seed the layout was drawn with
   * @return a sentence
   */
  public static String footer(long seed) {
    return "Made with Taketally, seed " + seed + ".";
  }

  /**
   * Heading of a session.
   *
   * @param block its name
   * @param plot its first
   * @return a few words
   */
  public static String session(String block, Plot plot) {
    return "Session %s: %s, %s".formatted(block, plot.session().grafter(), plot.session().day());
  }

  /**
   * Headings of a session's table.
   *
   * @param beds whether there is a column for beds
   * @return one per column
   */
  public static List<String> headings(boolean beds) {
    List<String> headings =
        new ArrayList<>(
            List.of("Label", "Cultivar", "Rootstock", "Grafts", "Done", "Takes", "Notes"));
    if (beds) {
      headings.add(1, "Bed");
    }
    return headings;
  }

  /**
   * The stock on a label.
   *
   * @param rootstock its name
   * @return a few words
   */
  public static String on(String rootstock) {
    return "on " + rootstock;
  }
}
