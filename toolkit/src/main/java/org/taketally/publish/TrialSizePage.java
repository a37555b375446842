package org.taketally.publish;

import java.util.List;
import org.taketally.figure.PlanFigures;
import org.taketally.plan.size.TrialSize;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.wording.TrialSizeWords;
import org.taketally.wording.pages.TrialSizePageWords;
import org.taketally.wording.pages.WorkingPageWords;

/** How many grafts a trial takes, as a page. */
public final class TrialSizePage {

  private final Page page;

  private TrialSizePage(Page page) {
    this.page = page;
  }

  /**
   * The page of a size.
   *
   * @param trial its size
   * @return the page
   */
  public static TrialSizePage of(TrialSize trial) {
    TrialSizeWords words = TrialSizeWords.of(trial);
    return new TrialSizePage(
        new Page(
            TrialSizePageWords.TITLE,
            TrialSizePageWords.LEAD,
            "",
            List.of(
                new Section(
                    "in-short",
                    WorkingPageWords.IN_SHORT,
                    List.of(
                        Bullets.of(List.of(words.difference(), words.equivalence())),
                        FigureBlocks.figure(size -> PlanFigures.trialSize(trial, size)))),
                new Section(
                    "chance",
                    TrialSizePageWords.CHANCE,
                    List.of(
                        new Table(
                            new Grid(
                                TrialSizePageWords.CHANCE,
                                TrialSizeWords.headings(),
                                words.table())))),
                new Section(
                    "rests-on", TrialSizePageWords.RESTS_ON, List.of(Bullets.of(words.more())))),
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
