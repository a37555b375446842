package org.taketally.answers.adjusted;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.AnswerOptions;
import org.taketally.model.FixedEffect;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.model.compare.Profiles;
import org.taketally.terms.Interval;

/**
 * Profile-likelihood ranges of everything a fit estimates: every value for which the best fit loses
 * no more log-likelihood than chance explains. Better than the usual ranges where these should be
 * lopsided; each asks for some ten further fits.
 *
 * @param ranges fixed effects, then standard deviations, in the order of the fit
 */
public record ProfileRanges(List<Range> ranges) {

  /**
   * One range.
   *
   * @param term column, or (intercept)
   * @param level its level; empty for numbers and standard deviations
   * @param standardDeviation whether it is the spread of a varying column
   * @param estimate logits
   * @param interval logits
   */
  public record Range(
      String term, String level, boolean standardDeviation, double estimate, Interval interval) {}

  public ProfileRanges {
    ranges = List.copyOf(ranges);
  }

  /**
   * Works them out.
   *
   * @param fit any fit
   * @param options level used
   * @return a range a fixed effect and a standard deviation
   */
  public static ProfileRanges of(TakeFit fit, AnswerOptions options) {
    Profiles profiles = Profiles.of(fit);
    List<Range> ranges = new ArrayList<>();
    for (FixedEffect effect : fit.fixed()) {
      Interval interval = profiles.fixed(ranges.size(), options.coverage());
      ranges.add(new Range(effect.term(), effect.level(), false, effect.estimate(), interval));
    }
    for (VaryingFactor factor : fit.varying()) {
      Interval interval = profiles.standardDeviation(factor.factor(), options.coverage());
      ranges.add(new Range(factor.factor(), "", true, factor.standardDeviation(), interval));
    }
    return new ProfileRanges(ranges);
  }
}
