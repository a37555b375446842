package org.taketally.publish;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.publish.privacy.PublishedTable.Entry;
import org.taketally.terms.Interval;
import org.taketally.wording.Words;

/** Results as members read them. */
final class PlainWords {

  private static final double LEVEL = 0.95;
  private static final long TOO_FEW_FOR_PERCENT = 20;

  private PlainWords() {}

  /** A take in tenths and its likely range, e.g. about 8 in 10 (likely 63 to 90 %). */
  static String take(Estimate take) {
    return "%s (likely %s)".formatted(inTen(take.value()), Words.percents(take.interval()));
  }

  /** The same in two columns of a table. */
  static List<String> takeColumns(Optional<Estimate> take) {
    return take.map(t -> List.of(inTen(t.value()), Words.percents(t.interval())))
        .orElse(List.of(PublicAnswers.NOT_SHOWN, PublicAnswers.NOT_SHOWN));
  }

  static String inTen(double take) {
    long tenths = Math.round(10 * take);
    if (tenths == 0) {
      return "fewer than 1 in 10";
    }
    return tenths == 10 ? "nearly all" : "about " + tenths + " in 10";
  }

  /** A counted take with its Wilson range; while few, the counts alone. */
  static String counted(TakeCount count) {
    if (count.grafts() < TOO_FEW_FOR_PERCENT) {
      return "too few for a percentage";
    }
    Interval range = TakeRateInterval.wilson(count.takes(), count.grafts(), LEVEL);
    return "%s (%s)".formatted(Words.percent(count.rate()), Words.percents(range));
  }

  /** A change of take with its likely range, e.g. 4 points lower (likely 8 lower to 1 higher). */
  static String change(double difference, Interval range) {
    return "%s %s (likely %s to %s)"
        .formatted(
            Words.points(difference),
            difference < 0 ? "lower" : "higher",
            side(range.low()),
            side(range.high()));
  }

  private static String side(double difference) {
    long points = Math.round(100 * Math.abs(difference));
    return points == 0 ? "none" : points + (difference < 0 ? " lower" : " higher");
  }

  /** Names of seasons, the first and last of many. */
  static String seasons(List<String> seasons) {
    return seasons.size() <= 2
        ? Words.list(seasons)
        : seasons.get(0) + " to " + seasons.get(seasons.size() - 1);
  }

  static String column(String column) {
    return Words.sentence(Words.column(column));
  }

  /** The name of a line: its level, or what the levels counted together are called. */
  static String name(Entry entry, String others) {
    if (entry.merged()) {
      return "%s (%d)".formatted(others, entry.levels().size());
    }
    return entry.levels().get(0).isEmpty() ? "not recorded" : entry.levels().get(0);
  }
}
