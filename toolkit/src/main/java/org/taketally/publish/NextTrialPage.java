package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.figure.PlanFigures;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.next.NextTrial;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Caution;
import org.taketally.publish.Block.Section;
import org.taketally.wording.NextTrialWords;
import org.taketally.wording.TrialLayoutWords;
import org.taketally.wording.pages.NextTrialPageWords;
import org.taketally.wording.pages.WorkingPageWords;

/** What to graft next, as a page. */
public final class NextTrialPage {

  private final Page page;

  private NextTrialPage(Page page) {
    this.page = page;
  }

  /**
   * The page of a plan.
   *
   * @param next what to graft next
   * @return the page
   */
  public static NextTrialPage of(NextTrial next) {
    NextTrialWords words = NextTrialWords.of(next);
    List<Section> sections = new ArrayList<>();
    List<Block> shortly = new ArrayList<>(List.of(new Callout(words.headline())));
    if (!words.more().isEmpty()) {
      shortly.add(Bullets.of(words.more()));
    }
    sections.add(new Section("in-short", WorkingPageWords.IN_SHORT, shortly));
    next.after()
        .ifPresent(
            after ->
                sections.add(
                    new Section(
                        "bring",
                        NextTrialPageWords.BRING,
                        List.of(FigureBlocks.figure(size -> PlanFigures.chances(after, size))))));
    next.layout().ifPresent(layout -> sections.add(layout(layout)));
    return new NextTrialPage(
        new Page(
            NextTrialPageWords.TITLE,
            NextTrialPageWords.LEAD,
            "",
            sections,
            WorkingPageWords.FOOTER));
  }

  private static Section layout(TrialLayout layout) {
    TrialLayoutWords words = TrialLayoutWords.of(layout);
    List<String> said = new ArrayList<>(List.of(words.headline()));
    said.addAll(words.more());
    return new Section(
        "layout",
        NextTrialPageWords.LAYOUT,
        List.of(
            Bullets.of(said),
            FigureBlocks.figure(size -> PlanFigures.layout(layout, size)),
            new Caution(WorkingPageWords.WOOD)));
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
