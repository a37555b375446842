package org.taketally.wording.figures;

import java.util.List;
import java.util.Locale;
import org.taketally.answers.AnswerOptions.Bands;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** The figure of cultivars from hard to easy in words. */
public final class DifficultyFigureWords {

  private final Difficulty answer;
  private final Phrases phrases;

  /**
   * The words of a figure.
   *
   * @param answer the figure shows
   * @param language of the figure
   */
  public DifficultyFigureWords(Difficulty answer, Language language) {
    this.answer = answer;
    this.phrases = Phrases.in(language);
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    long hard =
        answer.cultivars().stream()
            .filter(c -> c.band() == Band.HARD && c.clear(answer.options().bands()))
            .count();
    if (hard == 0) {
      return phrases.say("figure.difficulty.none");
    }
    return hard == 1
        ? phrases.say("figure.difficulty.one")
        : phrases.say("figure.difficulty.many", hard);
  }

  /**
   * What is shown, from how many grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return phrases.say(
        "figure.difficulty.subtitle", answer.cultivars().size(), answer.tally().grafts());
  }

  /**
   * How to read it.
   *
   * @return two sentences
   */
  public String note() {
    Bands bands = answer.options().bands();
    return phrases.say(
        "figure.difficulty.note",
        phrases.percent(bands.sure()),
        phrases.percent(bands.hardBelow()),
        phrases.percent(bands.easyFrom()));
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    List<CultivarTake> all = answer.cultivars();
    StringBuilder text = new StringBuilder(subtitle()).append('.');
    for (Band band : Band.values()) {
      List<String> names =
          all.stream().filter(c -> c.band() == band).map(CultivarTake::cultivar).toList();
      text.append(' ');
      text.append(phrases.say("figure.difficulty.list", band(band), Lists.words(phrases, names)));
    }
    if (!all.isEmpty()) {
      text.append(' ');
      text.append(
          phrases.say(
              "figure.difficulty.ends", detail(all.get(0)), detail(all.get(all.size() - 1))));
    }
    return text.toString();
  }

  /**
   * A cultivar in full.
   *
   * @param cultivar one of the answer's
   * @return a few words
   */
  public String detail(CultivarTake cultivar) {
    return phrases.say(
        "figure.difficulty.detail",
        cultivar.cultivar(),
        Lists.take(phrases, cultivar.take()),
        band(cultivar),
        cultivar.tally().grafts());
  }

  /**
   * A cultivar's take and band.
   *
   * @param cultivar one of the answer's
   * @return a few words
   */
  public String end(CultivarTake cultivar) {
    return phrases.say(
        "figure.difficulty.end", phrases.percent(cultivar.take().value()), band(cultivar));
  }

  /** A band the likely range reaches out of is only probable. */
  private String band(CultivarTake cultivar) {
    boolean sure = cultivar.band() == Band.CANT_TELL || cultivar.clear(answer.options().bands());
    return sure ? band(cultivar.band()) : phrases.say("band.probably", band(cultivar.band()));
  }

  /**
   * A band.
   *
   * @param band any
   * @return a word or two
   */
  public String band(Band band) {
    return phrases.say("band." + band.name().toLowerCase(Locale.ROOT));
  }

  /**
   * The key's word for the bar.
   *
   * @return a few words
   */
  public String likely() {
    return phrases.say("figure.likely");
  }

  /**
   * The key's word for the counted take.
   *
   * @return a few words
   */
  public String counted() {
    return phrases.say("figure.counted");
  }

  /**
   * Heading of the counts.
   *
   * @return a word
   */
  public String grafts() {
    return phrases.say("figure.grafts");
  }

  /**
   * A number of grafts.
   *
   * @param count any
   * @return the number
   */
  public String count(long count) {
    return phrases.count(count);
  }

  /**
   * What the axis shows.
   *
   * @return a few words
   */
  public String axis() {
    return phrases.say("figure.in.100");
  }

  /**
   * A share along the axis.
   *
   * @param share 0 to 1
   * @return per cent
   */
  public String percent(double share) {
    return phrases.percent(share);
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return phrases.say("figure.difficulty.gap", left);
  }
}
