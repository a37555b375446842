package org.taketally.wording.figures;

import java.util.List;
import java.util.Locale;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** The figure of differences between each two levels in words. */
public final class DifferencesFigureWords {

  private final FactorVerdict verdict;
  private final Phrases phrases;

  /**
   * The words of a figure.
   *
   * @param verdict the figure shows
   * @param language of the figure
   */
  public DifferencesFigureWords(FactorVerdict verdict, Language language) {
    this.verdict = verdict;
    this.phrases = Phrases.in(language);
  }

  /** What can be said about one pair. */
  public enum Finding {
    /** Within the margin, and perhaps no difference. */
    ABOUT_THE_SAME("figure.differences.same"),
    /** Some difference, within the margin. */
    SMALL("figure.differences.small"),
    /** Some difference, perhaps beyond the margin. */
    DIFFER("figure.differences.differ"),
    /** Neither can be said. */
    CANT_TELL("figure.differences.cant.tell");

    private final String key;

    Finding(String key) {
      this.key = key;
    }

    /**
     * What can be said.
     *
     * @param pair any
     * @return one of four
     */
    public static Finding of(Pair pair) {
      boolean apart = !pair.difference().interval().contains(0);
      if (pair.equivalent()) {
        return apart ? SMALL : ABOUT_THE_SAME;
      }
      return apart ? DIFFER : CANT_TELL;
    }
  }

  /**
   * The title, which is the verdict.
   *
   * @return a few words
   */
  public String title() {
    String factor = phrases.sentence(phrases.column(verdict.factor()));
    String found = phrases.say("verdict." + verdict.verdict().name().toLowerCase(Locale.ROOT));
    return phrases.say("figure.differences.title", factor, found);
  }

  /**
   * What is shown, from how many grafts.
   *
   * @param pairs shown
   * @return a few words
   */
  public String subtitle(List<Pair> pairs) {
    return phrases.say(
        "figure.differences.subtitle",
        verdict.levels().size(),
        pairs.size(),
        verdict.tally().grafts());
  }

  /**
   * The figure for those who can't see it.
   *
   * @param pairs shown, largest difference first
   * @return a few sentences
   */
  public String description(List<Pair> pairs) {
    StringBuilder text = new StringBuilder(subtitle(pairs)).append(". ");
    for (Finding finding : Finding.values()) {
      long count = pairs.stream().filter(p -> Finding.of(p) == finding).count();
      if (count > 0) {
        text.append(phrases.say("figure.differences.found", count, of(finding))).append(' ');
      }
    }
    if (!pairs.isEmpty()) {
      text.append(phrases.say("figure.differences.largest", detail(pairs.get(0)))).append(' ');
    }
    return text.append(phrases.say("figure.differences.margin", margin())).toString();
  }

  private String margin() {
    return phrases.points(verdict.options().margin());
  }

  /**
   * A finding.
   *
   * @param finding any
   * @return a few words
   */
  public String of(Finding finding) {
    return phrases.say(finding.key);
  }

  /**
   * The key's word for the heavy bar.
   *
   * @param pair any of those shown
   * @return a few words
   */
  public String alone(Pair pair) {
    double coverage = pair.equivalence().coverage();
    return phrases.say("figure.differences.alone", phrases.percent(coverage));
  }

  /**
   * The key's word for the thin bar.
   *
   * @return a few words
   */
  public String allAtOnce() {
    return phrases.say("figure.differences.all");
  }

  /**
   * That there is nothing to show.
   *
   * @return a sentence
   */
  public String empty() {
    return phrases.say("figure.differences.empty");
  }

  /**
   * How to read it.
   *
   * @return two sentences
   */
  public String note() {
    return phrases.say("figure.differences.note", margin());
  }

  /**
   * A pair.
   *
   * @param pair the higher first
   * @return a few words
   */
  public String label(Pair pair) {
    return phrases.say("figure.differences.pair", pair.level(), pair.other());
  }

  /**
   * A pair in full.
   *
   * @param pair the higher first
   * @return a few words
   */
  public String detail(Pair pair) {
    return phrases.say(
        "figure.differences.detail",
        pair.level(),
        pair.other(),
        phrases.points(pair.difference().value()),
        phrases.points(pair.deciding(verdict.options().margin()).interval()),
        of(Finding.of(pair)));
  }

  /**
   * The grafts behind a pair.
   *
   * @param first grafts of one level
   * @param second grafts of the other
   * @return both
   */
  public String grafts(long first, long second) {
    return phrases.count(first) + " + " + phrases.count(second);
  }

  /**
   * Heading of the counts.
   *
   * @return a word
   */
  public String graftsHeading() {
    return phrases.say("figure.grafts");
  }

  /**
   * The shaded stretch.
   *
   * @return a few words
   */
  public String zone() {
    return phrases.say("figure.differences.zone", margin());
  }

  /**
   * What the axis shows.
   *
   * @return a few words
   */
  public String axis() {
    return phrases.say("figure.differences.axis");
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return phrases.say("figure.differences.gap", left);
  }
}
