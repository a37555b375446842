package org.taketally.watch;

import java.util.ArrayList;
import java.util.List;
import org.taketally.model.CannotFit;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.RecordColumn;

/**
 * Past seasons watched as if they ran now, each against those before it: what would have been
 * caught, and how often it would have cried wolf.
 *
 * @param seasons those that could be watched, oldest first
 * @param left seasons that could not
 */
public record SeasonReplay(List<Replayed> seasons, List<LeftOut> left) {

  public SeasonReplay {
    seasons = List.copyOf(seasons);
    left = List.copyOf(left);
  }

  /**
   * A season watched against those before it.
   *
   * @param season its name
   * @param against how many seasons came before it, 1 or more
   * @param watched what was seen
   */
  public record Replayed(String season, int against, WatchedSeason watched) {}

  /**
   * A season that could not be watched.
   *
   * @param season its name
   * @param reason why
   */
  public record LeftOut(String season, Reason reason) {}

  /** Why a season could not be watched. */
  public enum Reason {
    /** It is the first: there is nothing to expect it by. */
    FIRST,
    /** No graft of it was counted on a stated day. */
    NO_COUNT,
    /** The seasons before it let nothing be expected. */
    NOTHING_EXPECTED
  }

  /**
   * Replays.
   *
   * @param records of two seasons or more
   * @param settings what to look for
   * @return each season but the first, watched against those before it
   * @throws IllegalArgumentException if the records hold fewer than two seasons
   */
  public static SeasonReplay of(GraftRecords records, SeasonWatch.Settings settings) {
    List<String> seasons =
        records.frame().containsColumn(RecordColumn.SEASON.columnName())
            ? records
                .frame()
                .column(RecordColumn.SEASON.columnName())
                .unique()
                .removeMissing()
                .asStringColumn()
                .asList()
                .stream()
                .sorted()
                .toList()
            : List.of();
    if (seasons.size() < 2) {
      throw new IllegalArgumentException(
          "a replay needs two seasons or more, found %s; name the sheets of all past seasons"
              .formatted(seasons));
    }
    List<Replayed> replayed = new ArrayList<>();
    List<LeftOut> left = new ArrayList<>(List.of(new LeftOut(seasons.get(0), Reason.FIRST)));
    for (int i = 1; i < seasons.size(); i++) {
      GraftRecords past =
          records.where(
              RecordColumn.SEASON.columnName(), seasons.subList(0, i).toArray(String[]::new));
      SeasonLots lots =
          SeasonLots.of(records.where(RecordColumn.SEASON.columnName(), seasons.get(i)));
      if (lots.counted().isEmpty()) {
        left.add(new LeftOut(seasons.get(i), Reason.NO_COUNT));
        continue;
      }
      try {
        replayed.add(new Replayed(seasons.get(i), i, SeasonWatch.of(lots, past, settings)));
      } catch (CannotFit nothing) {
        left.add(new LeftOut(seasons.get(i), Reason.NOTHING_EXPECTED));
      }
    }
    return new SeasonReplay(replayed, left);
  }

  /**
   * Alarms of all seasons.
   *
   * @return 0 or more
   */
  public int alarms() {
    return seasons.stream().mapToInt(season -> season.watched().watch().alarms().size()).sum();
  }
}
