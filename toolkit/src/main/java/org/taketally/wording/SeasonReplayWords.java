package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.watch.Cause;
import org.taketally.watch.SeasonReplay;
import org.taketally.watch.SeasonReplay.LeftOut;
import org.taketally.watch.SeasonReplay.Replayed;
import org.taketally.watch.TakeWatch.Alarm;

/** Past seasons watched as if they ran now, in words. */
public final class SeasonReplayWords {

  private final SeasonReplay replay;
  private final double falseAlarms;

  private SeasonReplayWords(SeasonReplay replay, double falseAlarms) {
    this.replay = replay;
    this.falseAlarms = falseAlarms;
  }

  /**
   * The words for a replay.
   *
   * @param replay the seasons
   * @param falseAlarms stated number a season
   * @return the words
   */
  public static SeasonReplayWords of(SeasonReplay replay, double falseAlarms) {
    return new SeasonReplayWords(replay, falseAlarms);
  }

  /**
   * What watching would have caught.
   *
   * @return one paragraph
   */
  public String headline() {
    int watched = replay.seasons().size();
    if (watched == 0) {
      return "No season could be watched.";
    }
    return "%s in %s watched against those before; by chance alone about %s would come in so many."
        .formatted(
            replay.alarms() == 0 ? "No alarm" : Words.count(replay.alarms(), "alarm"),
            Words.count(watched, "season"),
            String.format(Locale.ROOT, "%.1f", falseAlarms * watched));
  }

  /**
   * Season by season.
   *
   * @return a paragraph each
   */
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    replay.seasons().forEach(season -> lines.add(line(season)));
    replay.left().forEach(left -> lines.add(line(left)));
    lines.add(
        "Whether an alarm was right, the records can't say: look whether you remember what it"
            + " names.");
    return lines;
  }

  /**
   * One season.
   *
   * @param season as watched
   * @return one paragraph
   */
  public static String line(Replayed season) {
    List<Alarm> alarms = season.watched().watch().alarms();
    String found =
        alarms.isEmpty()
            ? "no alarm"
            : String.join("; ", alarms.stream().map(SeasonReplayWords::alarm).toList());
    return "%s, against %s: %s. %s of %s failed, about %s were expected."
        .formatted(
            season.season(),
            Words.count(season.against(), "season"),
            found,
            Words.count(season.watched().watch().failures()),
            Words.count(season.watched().watch().grafts(), "graft"),
            Words.count(Math.round(season.watched().expectedFailures())));
  }

  private static String alarm(Alarm alarm) {
    List<String> causes =
        alarm.causes().stream()
            .map((Cause cause) -> Words.level(cause.column(), cause.level()))
            .toList();
    return "ALARM on %s, %s"
        .formatted(
            alarm.day(),
            causes.isEmpty() ? "failures all over" : "most telling: " + Words.list(causes));
  }

  private static String line(LeftOut left) {
    return switch (left.reason()) {
      case FIRST -> "%s is the first: there is nothing to expect it by.".formatted(left.season());
      case NO_COUNT ->
          "%s could not be watched: no graft of it was counted on a stated day (assessed_date)."
              .formatted(left.season());
      case NOTHING_EXPECTED ->
          "%s could not be watched: the seasons before it let nothing be expected."
              .formatted(left.season());
    };
  }

  /**
   * As JSON; keys are documented in docs/watching.md.
   *
   * @return an object
   */
  public JsonObject json() {
    JsonObject json = new JsonObject();
    json.addProperty("alarms", replay.alarms());
    json.addProperty("falseAlarmsExpected", falseAlarms * replay.seasons().size());
    JsonArray seasons = new JsonArray();
    for (Replayed season : replay.seasons()) {
      JsonObject one = new JsonObject();
      one.addProperty("season", season.season());
      one.addProperty("against", season.against());
      one.addProperty("grafts", season.watched().watch().grafts());
      one.addProperty("failures", season.watched().watch().failures());
      one.addProperty("expectedFailures", season.watched().expectedFailures());
      JsonArray alarms = new JsonArray();
      season.watched().watch().alarms().stream().map(TakeWatchWords::alarm).forEach(alarms::add);
      one.add("alarms", alarms);
      seasons.add(one);
    }
    json.add("seasons", seasons);
    return json;
  }
}
