package org.taketally.wording.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.taketally.answers.AnswerOptions.Bands;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.plan.order.UsualTakes;
import org.taketally.wording.language.Phrases;

/** How hard cultivars are; a plain word only where the likely range lies within the band. */
public final class CultivarWords {

  /** Names a sentence has room for: clearly and probably hard. */
  private static final int MOST_CLEARLY = 6;

  private static final int MOST_PROBABLY = 4;

  private final Phrases phrases;
  private final Takes takes;

  CultivarWords(Phrases phrases) {
    this.phrases = phrases;
    this.takes = new Takes(phrases);
  }

  /**
   * A line of the table.
   *
   * @param cultivars its cultivar, or those counted together
   * @param merged whether they are counted together
   * @param count grafts and takes
   * @param take all else equal; empty if it can't be given
   */
  public record Entry(
      List<String> cultivars, boolean merged, TakeCount count, Optional<CultivarTake> take) {}

  /**
   * Heading.
   *
   * @return a question
   */
  public String heading() {
    return phrases.say("cultivars");
  }

  /**
   * That no cultivar can be listed.
   *
   * @return a sentence
   */
  public String tooFew() {
    return phrases.say("cultivars.few");
  }

  /**
   * Which are hard.
   *
   * @param answer cultivars that may be named
   * @return a sentence or two
   */
  public String hardOnes(Difficulty answer) {
    Bands bands = answer.options().bands();
    List<String> clearly = new ArrayList<>();
    List<String> probably = new ArrayList<>();
    for (CultivarTake c : answer.cultivars()) {
      if (c.band() == Band.HARD) {
        String named = phrases.say("cultivars.named", c.cultivar(), takes.inTen(c.take().value()));
        (c.clear(bands) ? clearly : probably).add(named);
      }
    }
    String all =
        clearly.isEmpty()
            ? phrases.say("cultivars.none.hard", phrases.percent(bands.hardBelow()))
            : phrases.say("cultivars.hard", named(clearly, MOST_CLEARLY));
    return probably.isEmpty()
        ? all
        : all + " " + phrases.say("cultivars.probably.hard", named(probably, MOST_PROBABLY));
  }

  /** The first of many; the table has all. */
  private String named(List<String> names, int most) {
    if (names.size() <= most + 1) {
      return phrases.list(names);
    }
    List<String> first = new ArrayList<>(names.subList(0, most));
    first.add(phrases.say("cultivars.more", names.size() - most));
    return phrases.list(first);
  }

  private String band(CultivarTake cultivar, Bands bands) {
    String band = phrases.say("band." + cultivar.band().name().toLowerCase(Locale.ROOT));
    return cultivar.band() == Band.CANT_TELL || cultivar.clear(bands)
        ? band
        : phrases.say("band.probably", band);
  }

  /**
   * Caption of the table.
   *
   * @param sorted whether the hardest stand first
   * @param merged how many cultivars are counted together
   * @return a few words
   */
  public String caption(boolean sorted, int merged) {
    return phrases.say(sorted ? "cultivars.caption.sorted" : "cultivars.caption")
        + takes.together(merged);
  }

  /**
   * Headings of the table.
   *
   * @param latest season with a column of its own; empty if it has none
   * @return one per column
   */
  public List<String> headings(Optional<String> latest) {
    List<String> headings = new ArrayList<>(phrases.headings("cultivars.headings"));
    latest.ifPresent(season -> headings.add(phrases.say("cultivars.latest", season)));
    return headings;
  }

  /**
   * A line of the table but for its latest season.
   *
   * @param entry its values
   * @param bands limits of easy and hard
   * @return one text per column
   */
  public List<String> row(Entry entry, Bands bands) {
    List<String> row = new ArrayList<>();
    row.add(takes.name("cultivar", entry.cultivars(), entry.merged()));
    row.add(takes.cell(entry.take().map(CultivarTake::take)));
    row.add(entry.take().map(c -> band(c, bands)).orElse(SeasonWords.NOT_SHOWN));
    row.add(takes.took(entry.count()));
    return row;
  }

  /**
   * Headings of what is usual.
   *
   * @param usual for each cultivar
   * @return one per column
   */
  public List<String> usualHeadings(UsualTakes usual) {
    return List.of(
        phrases.say("cultivars.of.ten", usual.grafts()),
        phrases.say("cultivars.for.trees", usual.trees()));
  }

  /**
   * What is usual for a cultivar.
   *
   * @param usual takes of a few grafts, and grafts for a few trees; empty if unknown
   * @return one text per column
   */
  public List<String> usualRow(Optional<UsualTakes.Usual> usual) {
    return List.of(
        usual
            .map(u -> phrases.say("cultivars.usual", u.low(), u.high()))
            .orElse(SeasonWords.NOT_SHOWN),
        usual
            .filter(u -> u.graftsForTrees().isPresent())
            .map(u -> phrases.count(u.graftsForTrees().getAsInt()))
            .orElse(SeasonWords.NOT_SHOWN));
  }

  /**
   * What usual means.
   *
   * @param usual for each cultivar
   * @return a sentence or two
   */
  public String usualNote(UsualTakes usual) {
    return phrases.say("cultivars.usual.note", usual.grafts(), usual.trees());
  }

  /**
   * What bars of takes run over.
   *
   * @return a few words
   */
  public String barHeading() {
    return phrases.say("bar.heading");
  }

  /**
   * Takes of the latest season.
   *
   * @param count grafts and takes; empty if they may not be shown
   * @return a few words
   */
  public String tookIn(Optional<TakeCount> count) {
    return count.map(takes::took).orElse(SeasonWords.NOT_SHOWN);
  }

  /**
   * How a member finds out whether their own result is normal.
   *
   * @return a few sentences
   */
  public String yours() {
    return phrases.say("cultivars.yours");
  }
}
