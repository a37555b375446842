package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.taketally.watch.Cause;
import org.taketally.watch.CountsDue;
import org.taketally.watch.RecentExcess;
import org.taketally.watch.SeasonLots;
import org.taketally.watch.TakeWatch;
import org.taketally.watch.TakeWatch.Alarm;
import org.taketally.watch.WatchedSeason;
import org.taketally.watch.WatchedSeason.Seen;

/** A watched season in words. */
public final class TakeWatchWords {

  private final WatchedSeason season;
  private final TakeWatch watch;

  private TakeWatchWords(WatchedSeason season) {
    this.season = season;
    this.watch = season.watch();
  }

  /**
   * The words for a watched season.
   *
   * @param season the chart, its alarms, and how the season runs as a whole
   * @return the words
   */
  public static TakeWatchWords of(WatchedSeason season) {
    return new TakeWatchWords(season);
  }

  /**
   * Whether the season is going wrong.
   *
   * @return one paragraph
   */
  public String headline() {
    String counts =
        "%s of %s counted failed, about %s were to be expected from past seasons."
            .formatted(
                Words.count(watch.failures()),
                Words.count(watch.grafts(), "graft"),
                Words.count(Math.round(season.expectedFailures())));
    if (watch.alarms().isEmpty()) {
      return "No alarm: no run of failures stands apart in this season. " + counts;
    }
    Alarm last = watch.alarms().get(watch.alarms().size() - 1);
    return "ALARM on %s (%s in this season): a run of failures beyond what chance gives, begun with the count of %s. %s"
        .formatted(last.day(), Words.count(watch.alarms().size(), "alarm"), last.since(), counts);
  }

  /**
   * How the season runs as a whole.
   *
   * @return one paragraph
   */
  public String wholeSeason() {
    double chance = season.asBadAsThis();
    String often =
        season.points() < 0
            ? " The chance of a season as bad or worse is %s.".formatted(Words.aboutChance(chance))
            : "";
    return "The season as a whole takes %s %s than past seasons would lead you to expect; that is allowed for above.%s"
        .formatted(
            Words.aboutPoints(season.points()), season.points() < 0 ? "worse" : "better", often);
  }

  /**
   * How things stand now, whatever has gathered before.
   *
   * @return one paragraph
   */
  public String lately() {
    RecentExcess now = watch.recent().get(watch.recent().size() - 1);
    String limit = Words.points(now.limit());
    if (now.beyond()) {
      return "Lately %s more in 100 fail than expected, more than chance gives (up to %s): it is still going on."
          .formatted(Math.round(100 * now.excess()), limit);
    }
    long size = Math.round(100 * Math.abs(now.excess()));
    if (size == 0) {
      return "Lately about as many fail as expected (chance gives up to %s more or fewer)."
          .formatted(limit);
    }
    if (-now.excess() > now.limit()) {
      return "Lately about %d fewer in 100 fail than expected, fewer than chance gives (up to %s): things go better, or failures aren't counted or written down."
          .formatted(size, limit);
    }
    return "Lately about %d %s in 100 fail than expected, within what chance gives (up to %s)."
        .formatted(size, now.excess() < 0 ? "fewer" : "more", limit);
  }

  /**
   * What is counted and what is due.
   *
   * @return one paragraph
   */
  public String due() {
    CountsDue due = season.due();
    List<String> parts = new ArrayList<>();
    parts.add("%s counted up to %s".formatted(Words.count(due.counted(), "graft"), due.asOf()));
    if (due.due() > 0) {
      parts.add("%s due for counting".formatted(Words.count(due.due())));
    }
    if (due.notYetDue() > 0) {
      parts.add("%s not due yet".formatted(Words.count(due.notYetDue())));
    }
    if (due.ageUnknown() > 0) {
      parts.add("%s not counted, due on no known day".formatted(Words.count(due.ageUnknown())));
    }
    String usual =
        due.usualDays().isPresent()
            ? " (past grafts were counted about %d days after grafting)"
                .formatted(due.usualDays().getAsInt())
            : "";
    return Words.list(parts) + usual + ". What is not counted is no failure.";
  }

  /**
   * Title of {@link #seen}: more is counted by now than the causes of an older alarm rest on.
   *
   * @return e.g. {@code Failures seen and expected, furthest apart first; all that was counted ...}
   */
  public String seenTitle() {
    return "Failures seen and expected, furthest apart first; all that was counted up to %s, the level of the season allowed for"
        .formatted(season.due().asOf());
  }

  /**
   * Headings of {@link #seen}.
   *
   * @return one a column
   */
  public static List<String> seenHeadings() {
    return List.of("", "grafts", "failed", "expected", "more than expected");
  }

  /**
   * Failures seen and expected by column and level, the level of the season allowed for.
   *
   * @param most rows of each column, those furthest from what was expected first
   * @return one row a level
   */
  public List<List<String>> seen(int most) {
    List<List<String>> rows = new ArrayList<>();
    season.seen().stream()
        .map(Seen::column)
        .distinct()
        .forEach(
            column ->
                season.seen().stream()
                    .filter(row -> row.column().equals(column))
                    .sorted(Comparator.comparingDouble((Seen row) -> -Math.abs(row.excess())))
                    .limit(most)
                    .forEach(row -> rows.add(row(row))));
    return rows;
  }

  private static List<String> row(Seen seen) {
    long more = Math.round(seen.excess());
    return List.of(
        Words.level(seen.column(), seen.level()),
        Words.count(seen.grafts()),
        Words.count(seen.failures()),
        Words.count(Math.round(seen.expectedFailures())),
        more > 0 ? "+" + more : String.valueOf(more));
  }

  /**
   * What failing lots have in common at the latest alarm.
   *
   * @return a paragraph a cause, the most telling first; empty without an alarm
   */
  public List<String> causes() {
    if (watch.latest().isEmpty()) {
      return List.of();
    }
    List<Cause> causes = watch.latest().get().causes();
    if (causes.isEmpty()) {
      return List.of(
          "No hand, day, batch or other recorded column stands out: look at what the whole season"
              + " shares, such as the weather, the stocks or how takes are counted.");
    }
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < causes.size(); i++) {
      Cause cause = causes.get(i);
      lines.add(
          "%d. %s: %s of %s counted up to %s failed, about %s were to be expected%s. %s"
              .formatted(
                  i + 1,
                  Words.sentence(Words.level(cause.column(), cause.level())),
                  Words.count(cause.failures()),
                  Words.count(cause.grafts(), "graft"),
                  watch.latest().get().day(),
                  Words.count(Math.round(cause.expectedFailures())),
                  i == 0 ? "" : ", even allowing for those above",
                  check(cause.column())));
    }
    lines.add(
        "These are prompts to look, not verdicts: what failing lots share need not be what made"
            + " them fail.");
    return lines;
  }

  /** What to look at first; common practice, no source. */
  private static String check(String column) {
    String name = column.toLowerCase(Locale.ROOT);
    if (name.contains("grafter")) {
      return "Look at knife, cut and tie, and at what this hand had to graft.";
    }
    if (name.contains("week") || name.contains("day")) {
      return "Look at the weather of those days, shade and water, before and after grafting.";
    }
    if (name.contains("batch") || name.contains("fridge") || name.contains("lot")) {
      return "Look at that wood: dry, chilled, sprouted or long kept.";
    }
    if (name.contains("rootstock") || name.contains("stock")) {
      return "Look at those stocks: condition, roots, size, lot.";
    }
    if (name.contains("cultivar")) {
      return "Look at the mother tree, bud stage and age of that wood.";
    }
    if (name.contains("site") || name.contains("block") || name.contains("bed")) {
      return "Look at water, shade and heat at that place.";
    }
    return "Look at what those lots had that others had not.";
  }

  /**
   * Alarms before the latest.
   *
   * @return a sentence each, oldest first
   */
  public List<String> earlier() {
    return watch.alarms().stream()
        .limit(Math.max(0, watch.alarms().size() - 1))
        .map(
            alarm ->
                "Earlier alarm on %s, begun with the count of %s%s."
                    .formatted(
                        alarm.day(),
                        alarm.since(),
                        alarm.causes().isEmpty()
                            ? ""
                            : "; most telling: "
                                + Words.level(
                                    alarm.causes().get(0).column(), alarm.causes().get(0).level())))
        .toList();
  }

  /**
   * What to say where nothing is counted yet.
   *
   * @param lots of the season, none counted
   * @return one paragraph
   */
  public static String nothingCounted(SeasonLots lots) {
    return "No alarm: nothing of this season is counted yet (%s without a result). Watch again when some are counted."
        .formatted(Words.count(lots.notCounted(), "graft"));
  }

  /**
   * What to say where grafts are counted, but on no stated day.
   *
   * @param lots of the season, none counted on a stated day
   * @return one sentence
   */
  public static String noDay(SeasonLots lots) {
    return "%s of this season counted, but on no stated day, so that nothing can be put in order; fill in assessed_date and watch again"
        .formatted(
            Words.count(lots.withoutDay(), "graft") + (lots.withoutDay() == 1 ? " is" : " are"));
  }

  /**
   * What was watched.
   *
   * @param lots of the season
   * @param falseAlarms stated number a season
   * @param oddsRatio odds of failing that are found fast
   * @return a paragraph each
   */
  public List<String> restsOn(SeasonLots lots, double falseAlarms, double oddsRatio) {
    List<String> lines = new ArrayList<>();
    lines.add(due());
    if (lots.withoutDay() > 0) {
      lines.add(
          "%s counted on no stated day, and left out: fill in assessed_date."
              .formatted(Words.count(lots.withoutDay(), "graft")));
    }
    lines.add(
        "The chart is set to find odds of failing %s times those expected, and to cry wolf about %s times a season while all is well; the level of the season is learnt as it goes, and days and hands that are a little better or worse are allowed for. Height now %s, limit %s."
            .formatted(
                String.format(Locale.ROOT, "%.1f", oddsRatio),
                String.format(Locale.ROOT, "%.2g", falseAlarms),
                String.format(
                    Locale.ROOT, "%.1f", watch.steps().get(watch.steps().size() - 1).height()),
                String.format(Locale.ROOT, "%.1f", watch.limit())));
    return lines;
  }

  /**
   * As JSON; keys are documented in docs/watching.md.
   *
   * @param lots of the season
   * @return an object
   */
  public JsonObject json(SeasonLots lots) {
    JsonObject json = new JsonObject();
    json.addProperty("alarm", !watch.alarms().isEmpty());
    json.addProperty("grafts", watch.grafts());
    json.addProperty("failures", watch.failures());
    json.addProperty("expectedFailures", season.expectedFailures());
    json.addProperty("seasonEffect", season.seasonEffect());
    json.addProperty("asBadAsThis", season.asBadAsThis());
    json.addProperty("notCounted", lots.notCounted());
    json.addProperty("withoutDay", lots.withoutDay());
    json.addProperty("due", season.due().due());
    json.addProperty("notYetDue", season.due().notYetDue());
    json.addProperty("limit", watch.limit());
    JsonArray alarms = new JsonArray();
    watch.alarms().forEach(alarm -> alarms.add(alarm(alarm)));
    json.add("alarms", alarms);
    JsonArray steps = new JsonArray();
    for (int i = 0; i < watch.steps().size(); i++) {
      JsonObject one = new JsonObject();
      one.addProperty("session", watch.steps().get(i).lot().label());
      one.addProperty("counted", watch.steps().get(i).lot().counted().toString());
      one.addProperty("height", watch.steps().get(i).height());
      one.addProperty("alarm", watch.steps().get(i).alarm());
      one.addProperty("recentExcess", watch.recent().get(i).excess());
      one.addProperty("recentLimit", watch.recent().get(i).limit());
      steps.add(one);
    }
    json.add("chart", steps);
    json.add("seen", seenJson());
    return json;
  }

  private JsonArray seenJson() {
    JsonArray rows = new JsonArray();
    for (Seen seen : season.seen()) {
      JsonObject one = new JsonObject();
      one.addProperty("column", seen.column());
      one.addProperty("level", seen.level());
      one.addProperty("grafts", seen.grafts());
      one.addProperty("failures", seen.failures());
      one.addProperty("expectedFailures", seen.expectedFailures());
      rows.add(one);
    }
    return rows;
  }

  static JsonObject alarm(Alarm alarm) {
    JsonObject json = new JsonObject();
    json.addProperty("day", alarm.day().toString());
    json.addProperty("since", alarm.since().toString());
    JsonArray causes = new JsonArray();
    alarm
        .causes()
        .forEach(
            cause -> {
              JsonObject one = new JsonObject();
              one.addProperty("column", cause.column());
              one.addProperty("level", cause.level());
              one.addProperty("grafts", cause.grafts());
              one.addProperty("failures", cause.failures());
              one.addProperty("expectedFailures", cause.expectedFailures());
              one.addProperty("oddsRatio", cause.oddsRatio());
              one.addProperty("gain", cause.gain());
              causes.add(one);
            });
    json.add("causes", causes);
    return json;
  }
}
