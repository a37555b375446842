package org.taketally.answers.advice;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.answers.advice.Advice.UseWithin;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.terms.Interval;

/**
 * How soon to use wood: the last day up to which take stays within a quarter of the margin of its
 * best, and by when it has surely fallen: by the margin, or as far as the records go.
 */
final class CurveRule {

  /** Part of the margin that is hardly a loss. Common practice, no source. */
  private static final double HARDLY = 0.25;

  private final TakeCurve curve;
  private final Sureness sureness;
  private final int freedom;

  /**
   * A rule for one curve.
   *
   * @param curve as shown
   * @param sureness how many questions were looked at
   * @param freedom degrees of freedom of the curve, at least 1: the points compared are chosen by
   *     looking at it, and a curve that bends more shows more by chance
   */
  CurveRule(TakeCurve curve, Sureness sureness, int freedom) {
    this.curve = curve;
    this.sureness = sureness;
    this.freedom = freedom;
  }

  Optional<UseWithin> advice() {
    List<Point> solid = curve.points().stream().filter(point -> !point.thin()).toList();
    if (solid.size() < 2) {
      return Optional.empty();
    }
    double margin = curve.options().margin();
    Point best =
        solid.stream().max(Comparator.comparingDouble(p -> p.take().value())).orElseThrow();
    double near = best.take().value() - HARDLY * margin;
    int at = solid.indexOf(best);
    while (at + 1 < solid.size() && solid.get(at + 1).take().value() >= near) {
      at++;
    }
    Point within = solid.get(at);
    List<Point> later = solid.subList(at + 1, solid.size());
    return later.stream()
        .filter(p -> p.take().value() <= best.take().value() - margin)
        .findFirst()
        .or(() -> later.stream().min(Comparator.comparingDouble(p -> p.take().value())))
        .map(beyond -> advice(within, beyond))
        .filter(a -> a.gain().value() >= margin / 2)
        .filter(a -> a.sure() >= SeasonAdviceCalculator.SURE);
  }

  /**
   * Advice that holds within hands and days as well.
   *
   * @param advice from the curve shown
   * @param within the same curve within hands and days
   * @return as sure as the less sure of the two
   */
  Optional<UseWithin> confirmed(UseWithin advice, TakeCurve within) {
    Estimate gain = fall(take(within, advice.within()), take(within, advice.beyond()));
    double sure = Math.min(advice.sure(), sureness.above(gain, freedom));
    boolean worth = gain.value() >= curve.options().margin() / 2;
    return worth && sure >= SeasonAdviceCalculator.SURE
        ? Optional.of(
            new UseWithin(
                advice.factor(),
                advice.unit(),
                advice.within(),
                advice.beyond(),
                advice.takeWithin(),
                advice.takeBeyond(),
                advice.gain(),
                sure,
                advice.grafts()))
        : Optional.empty();
  }

  private static Estimate take(TakeCurve curve, double value) {
    return curve.points().stream()
        .min(Comparator.comparingDouble(point -> Math.abs(point.value() - value)))
        .orElseThrow()
        .take();
  }

  private UseWithin advice(Point within, Point beyond) {
    Estimate gain = fall(within.take(), beyond.take());
    return new UseWithin(
        curve.column(),
        curve.unit(),
        within.value(),
        beyond.value(),
        within.take(),
        beyond.take(),
        gain,
        sureness.above(gain, freedom),
        curve.tally().grafts());
  }

  /** Both ends' errors added as if they had nothing in common, which is on the safe side. */
  private static Estimate fall(Estimate from, Estimate to) {
    double value = from.value() - to.value();
    double less = Math.hypot(from.value() - from.low(), to.high() - to.value());
    double more = Math.hypot(from.high() - from.value(), to.value() - to.low());
    return new Estimate(
        value, new Interval(value - less, value + more, from.interval().coverage()));
  }
}
