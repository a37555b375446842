package org.taketally.wording.figures;

import java.util.List;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.effects.FactorImportance.Kind;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** The figure of every factor on one scale in words. */
public final class ImportanceFigureWords {

  /** More that tie are all in the figure. */
  private static final int MOST_TIES = 3;

  private final FactorImportance answer;
  private final Phrases phrases;

  /**
   * The words of a figure.
   *
   * @param answer the figure shows
   * @param language of the figure
   */
  public ImportanceFigureWords(FactorImportance answer, Language language) {
    this.answer = answer;
    this.phrases = Phrases.in(language);
  }

  /**
   * The title, which is what was found: the largest of those that surely go with take.
   *
   * @param factors shown, largest first
   * @return a few words
   */
  public String title(List<Importance> factors) {
    List<Importance> sure = factors.stream().filter(Importance::sure).toList();
    if (sure.isEmpty()) {
      return phrases.say("figure.importance.empty");
    }
    String most = phrases.points(sure.get(0).typical().value());
    List<String> ties =
        sure.stream()
            .filter(factor -> phrases.points(factor.typical().value()).equals(most))
            .map(factor -> phrases.column(factor.factor()))
            .toList();
    return ties.size() > MOST_TIES
        ? phrases.say("figure.importance.empty")
        : phrases.say("figure.importance.title", phrases.list(ties));
  }

  /**
   * What is shown, from how many grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return phrases.say("figure.importance.subtitle", answer.tally().grafts());
  }

  /**
   * The figure for those who can't see it.
   *
   * @param factors shown, largest first
   * @return a few sentences
   */
  public String description(List<Importance> factors) {
    String all = phrases.list(factors.stream().map(this::detail).toList());
    StringBuilder text = new StringBuilder(subtitle()).append(". ");
    text.append(phrases.say("figure.importance.largest", all));
    for (Importance importance : factors) {
      if (importance.compared()) {
        String factor = phrases.sentence(phrases.column(importance.factor()));
        int place = factors.indexOf(importance) + 1;
        text.append(". ");
        text.append(phrases.say("figure.importance.stands", factor, place, factors.size()));
      }
    }
    return text.append('.').toString();
  }

  /**
   * A factor in full.
   *
   * @param importance any
   * @return a few words
   */
  public String detail(Importance importance) {
    return phrases.say(
        "figure.importance.detail",
        phrases.column(importance.factor()),
        phrases.points(importance.typical().value()),
        phrases.points(importance.typical().interval()));
  }

  /**
   * The key's word for the factor asked about.
   *
   * @return a few words
   */
  public String asked() {
    return phrases.say("figure.importance.asked");
  }

  /**
   * The key's word for all others.
   *
   * @return a few words
   */
  public String others() {
    return phrases.say("figure.importance.others");
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
   * How to read it.
   *
   * @return a sentence
   */
  public String note() {
    return phrases.say("figure.importance.note");
  }

  /**
   * A factor's name.
   *
   * @param importance any
   * @return a few words
   */
  public String label(Importance importance) {
    String name = phrases.column(importance.factor());
    return importance.compared() ? phrases.say("figure.importance.question", name) : name;
  }

  /**
   * How many levels a factor has.
   *
   * @param importance any
   * @return a few words
   */
  public String levels(Importance importance) {
    return importance.kind() == Kind.NUMBER
        ? phrases.say("figure.importance.number")
        : phrases.say("figure.importance.levels", importance.levels());
  }

  /**
   * A factor's typical difference.
   *
   * @param importance any
   * @param ranged whether its range is to follow, unless it is nothing but zero
   * @return a few words
   */
  public String typical(Importance importance, boolean ranged) {
    String typical = phrases.points(importance.typical().value());
    long low = Math.round(100 * importance.typical().low());
    long high = Math.round(100 * importance.typical().high());
    return ranged && high > 0
        ? typical + " (" + phrases.say("range", phrases.count(low), phrases.count(high)) + ")"
        : typical;
  }

  /**
   * The shaded stretch.
   *
   * @return a few words
   */
  public String zone() {
    return phrases.say("figure.importance.zone");
  }

  /**
   * What the axis shows.
   *
   * @return a few words
   */
  public String axis() {
    return phrases.say("figure.importance.axis");
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return phrases.say("figure.importance.gap", left);
  }
}
