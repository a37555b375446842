package org.taketally.notebook.display;

import java.util.ArrayList;
import java.util.List;
import org.taketally.figure.PlanFigures;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.next.NextTrial;
import org.taketally.plan.order.BudwoodPlan;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.VerdictChances;
import org.taketally.watch.SeasonReplay;
import org.taketally.watch.WatchedSeason;
import org.taketally.wording.BudwoodPlanWords;
import org.taketally.wording.GraftOrderWords;
import org.taketally.wording.NextTrialWords;
import org.taketally.wording.SeasonReplayWords;
import org.taketally.wording.TakeWatchWords;
import org.taketally.wording.TrialLayoutWords;
import org.taketally.wording.TrialSizeWords;

/** Plans, orders and watched seasons. */
final class Plans {

  private static final int LEVELS = 3;
  private static final double FALSE_ALARMS = 0.2;

  private Plans() {}

  private static Shown said(String headline, List<String> more) {
    List<Shown> parts = new ArrayList<>(List.of(Shown.heading(headline)));
    more.stream().map(Shown::paragraph).forEach(parts::add);
    return Shown.all(parts);
  }

  static Shown size(TrialSize size) {
    TrialSizeWords words = TrialSizeWords.of(size);
    return Shown.all(
        Shown.paragraph(words.difference()),
        Shown.paragraph(words.equivalence()),
        Shown.of(Grid.of("", TrialSizeWords.headings(), words.table())));
  }

  static Shown layout(TrialLayout layout) {
    TrialLayoutWords words = TrialLayoutWords.of(layout);
    return said(words.headline(), words.more());
  }

  static Shown chances(VerdictChances chances) {
    return Shown.all(
        Shown.paragraph(TrialLayoutWords.chances(chances)),
        Shown.figure(PlanFigures.chances(chances)));
  }

  static Shown next(NextTrial next) {
    NextTrialWords words = NextTrialWords.of(next);
    List<Shown> parts = new ArrayList<>(List.of(said(words.headline(), words.more())));
    next.after().map(PlanFigures::chances).map(Shown::figure).ifPresent(parts::add);
    next.layout()
        .map(PlanFigures::layout)
        .map(Shown::figure)
        .ifPresent(map -> parts.add(Shown.folded("Which graft goes where", map)));
    return Shown.all(parts);
  }

  static Shown order(GraftOrder order) {
    GraftOrderWords words = GraftOrderWords.of(order);
    return Shown.all(
        said(words.headline(), words.more()),
        Shown.of(Grid.of("", words.headings(), words.table())),
        Shown.figure(PlanFigures.order(order)));
  }

  static Shown budwood(BudwoodPlan plan) {
    BudwoodPlanWords words = BudwoodPlanWords.of(plan);
    return Shown.all(
        said(words.headline(), words.more()),
        Shown.of(Grid.of("", words.headings(), words.table())));
  }

  static Shown season(WatchedSeason season) {
    TakeWatchWords words = TakeWatchWords.of(season);
    List<String> more = new ArrayList<>(words.earlier());
    more.addAll(List.of(words.lately(), words.wholeSeason(), words.due()));
    more.addAll(words.causes());
    return Shown.all(
        said(words.headline(), more),
        Shown.of(Grid.of("", TakeWatchWords.seenHeadings(), words.seen(LEVELS))));
  }

  static Shown replay(SeasonReplay replay) {
    SeasonReplayWords words = SeasonReplayWords.of(replay, FALSE_ALARMS);
    return said(words.headline(), words.more());
  }
}
