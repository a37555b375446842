package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.figure.PlanFigures;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Fold;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.watch.SeasonReplay;
import org.taketally.watch.WatchedSeason;
import org.taketally.wording.SeasonReplayWords;
import org.taketally.wording.TakeWatchWords;

/** The running season, or past ones replayed, as a page. It names hands: not for publication. */
public final class WatchPage {

  private static final String STAMP = "Not for publication";
  private static final int LEVELS = 12;

  private final Page page;

  private WatchPage(Page page) {
    this.page = page;
  }

  /**
   * The page of a watched season.
   *
   * @param season as watched
   * @param restsOn what it rests on, a paragraph each
   * @return the page
   */
  public static WatchPage of(WatchedSeason season, List<String> restsOn) {
    TakeWatchWords words = TakeWatchWords.of(season);
    List<Section> sections = new ArrayList<>();
    List<Block> shortly = new ArrayList<>(List.of(new Callout(words.headline())));
    words.earlier().forEach(line -> shortly.add(new Paragraph(line)));
    shortly.add(FigureBlocks.figure(size -> PlanFigures.season(season, size)));
    shortly.add(Bullets.of(List.of(words.lately(), words.wholeSeason())));
    sections.add(new Section("in-short", "Is this season going wrong?", shortly));
    if (!words.causes().isEmpty()) {
      sections.add(
          new Section("check-first", "What to check first", List.of(Bullets.of(words.causes()))));
    }
    Grid seen =
        new Grid(
            "Failures seen and expected, furthest apart first; the level of the season allowed for",
            TakeWatchWords.seenHeadings(),
            words.seen(LEVELS));
    sections.add(
        new Section(
            "seen",
            "Seen and expected",
            List.of(
                new Fold(
                    new Section(
                        "seen-table",
                        "By hand, week, stock and batch",
                        List.of(new Table(seen)))))));
    sections.add(new Section("rests-on", "What this rests on", List.of(Bullets.of(restsOn))));
    return new WatchPage(
        new Page(
            "The running season",
            "Grafts counted so far against what past seasons let expect.",
            STAMP,
            sections,
            "Made with Taketally."));
  }

  /**
   * The page of a replay.
   *
   * @param replay past seasons, each watched against those before it
   * @param falseAlarms stated number a season
   * @return the page
   */
  public static WatchPage of(SeasonReplay replay, double falseAlarms) {
    SeasonReplayWords words = SeasonReplayWords.of(replay, falseAlarms);
    List<Section> sections = new ArrayList<>();
    sections.add(
        new Section(
            "in-short",
            "What would watching have caught?",
            List.of(new Callout(words.headline()), Bullets.of(words.more()))));
    for (SeasonReplay.Replayed season : replay.seasons()) {
      sections.add(
          new Section(
              "season-" + season.season().replaceAll("\\W+", "-"),
              "Season " + season.season(),
              List.of(
                  new Paragraph(SeasonReplayWords.line(season)),
                  FigureBlocks.figure(size -> PlanFigures.season(season.watched(), size)))));
    }
    return new WatchPage(
        new Page(
            "Past seasons replayed",
            "Each season watched against those before it, as if it ran now.",
            STAMP,
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
