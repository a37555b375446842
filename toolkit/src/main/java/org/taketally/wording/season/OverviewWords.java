package org.taketally.wording.season;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeDifference;
import org.taketally.answers.counts.TakeMeaning;
import org.taketally.terms.Interval;
import org.taketally.wording.language.Phrases;

/** Who took part, what was counted, what changed. */
public final class OverviewWords {

  private static final double LEVEL = 0.95;

  private final Phrases phrases;
  private final Takes takes;

  OverviewWords(Phrases phrases) {
    this.phrases = phrases;
    this.takes = new Takes(phrases);
  }

  /**
   * Heading of the page's first part.
   *
   * @return a few words
   */
  public String inShort() {
    return phrases.say("in.short");
  }

  /**
   * How many took, where no counts may be shown.
   *
   * @param grafts assessed
   * @param parts parts the whole was divided into: 10, 4 or 2
   * @param part which of them, from 0
   * @return a sentence
   */
  public String tookTogether(long grafts, int parts, int part) {
    return phrases.say("took.joint", grafts, share(parts, part));
  }

  private String share(int parts, int part) {
    return switch (parts) {
      case 10 -> takes.inTen(part / 10.0);
      case 4 -> phrases.say("joint.quarters." + part);
      default -> phrases.say("joint.halves." + part);
    };
  }

  /**
   * How many took in a season.
   *
   * @param season its name
   * @param count its grafts and takes
   * @return a sentence
   */
  public String took(String season, TakeCount count) {
    return phrases.say(
        "took.season", season, count.takes(), count.grafts(), takes.inTen(count.rate()));
  }

  /**
   * How many took in all.
   *
   * @param count grafts and takes
   * @return a sentence
   */
  public String took(TakeCount count) {
    return phrases.say("took.all", count.takes(), count.grafts(), takes.inTen(count.rate()));
  }

  /**
   * Heading of who took part.
   *
   * @return a few words
   */
  public String whoAndWhat() {
    return phrases.say("who");
  }

  /**
   * Who took part.
   *
   * @param members of the latest season; empty if the records don't say
   * @param sites of the latest season, 0 if the records don't say
   * @param season the latest; may be empty
   * @return a sentence, or an empty text if nothing is known
   */
  public String tookPart(OptionalInt members, long sites, String season) {
    List<String> parts = new ArrayList<>();
    members.ifPresent(count -> parts.add(phrases.say("who.members", count)));
    if (sites > 0) {
      parts.add(phrases.say("who.sites", sites));
    }
    if (parts.isEmpty()) {
      return "";
    }
    String who =
        parts.size() == 1 ? parts.get(0) : phrases.say("who.both", parts.get(0), parts.get(1));
    return season.isEmpty() ? phrases.say("who.all", who) : phrases.say("who.season", who, season);
  }

  /**
   * What all results rest on.
   *
   * @param grafts assessed
   * @param seasons they were made in
   * @return a sentence
   */
  public String restsOn(long grafts, List<String> seasons) {
    return seasons.isEmpty()
        ? phrases.say("who.rests", grafts)
        : phrases.say("who.rests.seasons", grafts, takes.seasons(seasons));
  }

  /**
   * What a take is in these records.
   *
   * @param meaning of the records
   * @param unassessed grafts never counted
   * @return a sentence or two
   */
  public String takeMeans(TakeMeaning meaning, long unassessed) {
    String when = meaning.days().map(this::days).orElse(phrases.say("take.means.last"));
    String text = phrases.say("take.means", when);
    return unassessed == 0 ? text : text + " " + phrases.say("take.unassessed", unassessed);
  }

  private String days(TakeMeaning.Days days) {
    return days.from() == days.to()
        ? phrases.say("take.means.day", days.from())
        : phrases.say("take.means.days", days.from(), days.to());
  }

  /**
   * Caption of the table of seasons.
   *
   * @return a few words
   */
  public String seasonsCaption() {
    return phrases.say("seasons.caption");
  }

  /**
   * Headings of the table of seasons.
   *
   * @return one per column
   */
  public List<String> seasonsHeadings() {
    return phrases.headings("seasons.headings");
  }

  /**
   * A line of the table of seasons.
   *
   * @param seasons its season, or those counted together
   * @param merged whether they are counted together
   * @param count grafts and takes
   * @return one text per column
   */
  public List<String> seasonRow(List<String> seasons, boolean merged, TakeCount count) {
    return List.of(
        takes.name("season", seasons, merged),
        phrases.count(count.grafts()),
        phrases.count(count.takes()),
        takes.counted(count));
  }

  /**
   * Heading of what changed.
   *
   * @param before the season before
   * @return a few words
   */
  public String changed(String before) {
    return phrases.say("changed", before);
  }

  /**
   * A season beside the one before.
   *
   * @param latest its name
   * @param now its grafts and takes
   * @param before name of the one before
   * @param then that one's grafts and takes
   * @return two sentences
   */
  public String changedFrom(String latest, TakeCount now, String before, TakeCount then) {
    Interval range = TakeDifference.newcombe(now, then, LEVEL);
    String text =
        phrases.say(
            "changed.text",
            phrases.percent(now.rate()),
            latest,
            phrases.percent(then.rate()),
            before,
            takes.change(now.rate() - then.rate(), range));
    return text + " " + phrases.say(range.contains(0) ? "changed.chance" : "changed.sure");
  }

  /**
   * What a comparison of seasons doesn't say.
   *
   * @return two sentences
   */
  public String changedLimits() {
    return phrases.say("changed.limits");
  }
}
