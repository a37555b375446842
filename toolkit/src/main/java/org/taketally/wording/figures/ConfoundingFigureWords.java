package org.taketally.wording.figures;

import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.confounding.Confounding.Tie;
import org.taketally.wording.TieWords;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** The figure of what was compared with what in words. */
public final class ConfoundingFigureWords {

  /** The shaded stretch. */
  public static final String ZONE = "no comparison";

  /** What the axis shows. */
  public static final String AXIS = "share of the information";

  private final Confounding answer;
  private final String what;

  /**
   * The words of a figure.
   *
   * @param answer the figure shows
   */
  public ConfoundingFigureWords(Confounding answer) {
    this.answer = answer;
    this.what = Words.column(answer.compared());
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    return answer.comparable()
        ? "All levels of %s can be compared".formatted(what)
        : "Not all levels of %s can be compared".formatted(what);
  }

  /**
   * What is shown, from how many grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return "Information left once everything else recorded is allowed for; "
        + Words.count(answer.grafts(), "graft");
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    return subtitle() + ". " + Wording.of(answer).text();
  }

  /**
   * The first line.
   *
   * @return a few words
   */
  public String all() {
    return "all levels of " + what;
  }

  /**
   * The first line in full.
   *
   * @return a sentence
   */
  public String allDetail() {
    return Wording.of(answer).headline();
  }

  /**
   * A tie.
   *
   * @param tie any
   * @return a few words
   */
  public String label(Tie tie) {
    return "%s within %s".formatted(Words.column(tie.factor()), Words.column(tie.other()));
  }

  /**
   * A tie in full.
   *
   * @param tie any
   * @return a sentence
   */
  public String detail(Tie tie) {
    return TieWords.sentence(tie);
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return Words.count(left) + " ties between are in the table";
  }
}
