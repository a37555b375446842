package org.taketally.wording.season;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.terms.Interval;
import org.taketally.wording.language.Phrases;

/** Takes and names as members read them. */
final class Takes {

  private static final double LEVEL = 0.95;
  private static final long TOO_FEW_FOR_PERCENT = 20;

  private final Phrases phrases;

  Takes(Phrases phrases) {
    this.phrases = phrases;
  }

  /** A take in tenths and its likely range, e.g. about 8 in 10 (likely 63 to 90 %). */
  String take(Estimate take) {
    return phrases.say("take", inTen(take.value()), phrases.percents(take.interval()));
  }

  /** A take in per cent and its likely range, e.g. 78 % (63 to 90 %); a dash if not shown. */
  String cell(Optional<Estimate> take) {
    return take.map(
            t ->
                phrases.say(
                    "take.cell", phrases.percent(t.value()), phrases.percents(t.interval())))
        .orElse(SeasonWords.NOT_SHOWN);
  }

  /** Takes of grafts, e.g. 32 of 188. */
  String took(TakeCount count) {
    return phrases.say("took", count.takes(), count.grafts());
  }

  String inTen(double take) {
    long tenths = Math.round(10 * take);
    if (tenths == 0) {
      return phrases.say("tenths.none");
    }
    return tenths == 10 ? phrases.say("tenths.all") : phrases.say("tenths", tenths);
  }

  /** A counted take with its Wilson range; while few, the counts alone. */
  String counted(TakeCount count) {
    if (count.grafts() < TOO_FEW_FOR_PERCENT) {
      return phrases.say("counted.few");
    }
    Interval range = TakeRateInterval.wilson(count.takes(), count.grafts(), LEVEL);
    return phrases.say("counted", phrases.percent(count.rate()), phrases.percents(range));
  }

  /** A change of take with its likely range, e.g. 4 points lower (likely 8 lower to 1 higher). */
  String change(double difference, Interval range) {
    return phrases.say(
        "change",
        phrases.points(difference),
        phrases.say(difference < 0 ? "change.lower" : "change.higher"),
        side(range.low()),
        side(range.high()));
  }

  private String side(double difference) {
    long points = Math.round(100 * Math.abs(difference));
    if (points == 0) {
      return phrases.say("change.none");
    }
    return phrases.say(difference < 0 ? "change.side.lower" : "change.side.higher", points);
  }

  /** Names of seasons, the first and last of many. */
  String seasons(List<String> seasons) {
    return seasons.size() <= 2
        ? phrases.list(seasons)
        : phrases.say("range", seasons.get(0), seasons.get(seasons.size() - 1));
  }

  String column(String column) {
    return phrases.sentence(phrases.column(column));
  }

  /**
   * The name of a line: its level, or what the levels counted together are called.
   *
   * @param column season, cultivar or rootstock
   */
  String name(String column, List<String> levels, boolean merged) {
    if (merged) {
      return phrases.say("others." + column, levels.size());
    }
    return levels.get(0).isEmpty() ? phrases.say("not.recorded") : levels.get(0);
  }

  /** How many lines are counted together, to follow a caption; empty if none. */
  String together(int merged) {
    return merged == 0 ? "" : phrases.say("counted.together", merged);
  }
}
