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
import org.taketally.wording.pages.WatchPageWords;
import org.taketally.wording.pages.WorkingPageWords;

/** The running season, or past ones replayed, as a page. It names hands: not for publication. */
public final class WatchPage {

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
    sections.add(new Section("in-short", WatchPageWords.GOING_WRONG, shortly));
    if (!words.causes().isEmpty()) {
      sections.add(
          new Section(
              "check-first", WatchPageWords.CHECK_FIRST, List.of(Bullets.of(words.causes()))));
    }
    Grid seen = new Grid(words.seenTitle(), TakeWatchWords.seenHeadings(), words.seen(LEVELS));
    sections.add(
        new Section(
            "seen",
            WatchPageWords.SEEN,
            List.of(
                new Fold(
                    new Section("seen-table", WatchPageWords.SEEN_BY, List.of(new Table(seen)))))));
    sections.add(new Section("rests-on", WatchPageWords.RESTS_ON, List.of(Bullets.of(restsOn))));
    return new WatchPage(
        new Page(
            WatchPageWords.TITLE,
            WatchPageWords.LEAD,
            WatchPageWords.STAMP,
            sections,
            WorkingPageWords.FOOTER));
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
            WatchPageWords.CAUGHT,
            List.of(new Callout(words.headline()), Bullets.of(words.more()))));
    for (SeasonReplay.Replayed season : replay.seasons()) {
      sections.add(
          new Section(
              "season-" + season.season().replaceAll("\\W+", "-"),
              WatchPageWords.season(season.season()),
              List.of(
                  new Paragraph(SeasonReplayWords.line(season)),
                  FigureBlocks.figure(size -> PlanFigures.season(season.watched(), size)))));
    }
    return new WatchPage(
        new Page(
            WatchPageWords.REPLAY_TITLE,
            WatchPageWords.REPLAY_LEAD,
            WatchPageWords.STAMP,
            sections,
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
