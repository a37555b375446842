package org.taketally.wording.figures;

import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.answers.prediction.SecondOpinions;
import org.taketally.wording.Words;

/** The figure of predicted against counted take in words. */
public final class CalibrationFigureWords {

  /** Title where one model predicts. */
  public static final String TITLE = "Predicted and counted take";

  /** Title where several ways predict. */
  public static final String TITLE_BESIDE = "Predicted and counted take, other ways beside";

  /** The key's word for a mark. */
  public static final String GROUP = "a group of grafts";

  /** The key's word for the diagonal. */
  public static final String EQUAL = "predicted equals counted";

  /** What the axis shows. */
  public static final String AXIS = "predicted take";

  /** How to read it. */
  public static final String NOTE =
      "Upwards: take as counted. Points near the line mean that predictions can be believed.";

  private CalibrationFigureWords() {}

  /**
   * What is shown, from how many grafts.
   *
   * @param checks of the fit
   * @return a few words
   */
  public static String subtitle(FitChecks checks) {
    return "Grafts in %s by predicted take; %s"
        .formatted(
            Words.count(checks.tenths().size(), "group"),
            Words.count(checks.tally().grafts(), "graft"));
  }

  /**
   * What is shown, from how many grafts.
   *
   * @param answer second opinions
   * @return a few words
   */
  public static String subtitle(SecondOpinions answer) {
    return "Each way of predicting on a %s it had not seen; grafts in tenths by predicted take; %s"
        .formatted(answer.heldOut(), Words.count(answer.tally().grafts(), "graft"));
  }

  /**
   * A tenth in full.
   *
   * @param tenth any
   * @return a few words
   */
  public static String detail(Tenth tenth) {
    return "predicted %s, counted %s of %s"
        .formatted(
            Words.percent(tenth.predicted()),
            Words.percent(tenth.tally().rate()),
            Words.count(tenth.tally().grafts(), "graft"));
  }
}
