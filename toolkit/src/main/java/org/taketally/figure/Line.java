package org.taketally.figure;

import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.terms.Interval;

/** One line of a {@link RowChart}. */
sealed interface Line {

  /**
   * What is written on a line.
   *
   * @param label what it is about, as the records spell it
   * @param count grafts behind it, in words
   * @param end the result in words, right of the marks
   * @param detail the whole line in words, shown when pointed at
   */
  record Caption(String label, String count, String end, String detail) {}

  /**
   * An estimate with its range.
   *
   * @param caption what is written on the line
   * @param mark shape of the estimate
   * @param estimate where the mark and its range stand
   * @param inner a second, narrower range, drawn heavier
   * @param counted the same as counted, drawn as a small open mark
   * @param highlighted whether the question is about this line
   */
  record Row(
      Caption caption,
      Mark mark,
      Estimate estimate,
      Optional<Interval> inner,
      Optional<Double> counted,
      boolean highlighted)
      implements Line {

    static Row of(Caption caption, Mark mark, Estimate estimate) {
      return new Row(caption, mark, estimate, Optional.empty(), Optional.empty(), false);
    }

    /** A value worked out, not estimated: a mark without a range. */
    static Row exact(Caption caption, double value) {
      return of(caption, Mark.CIRCLE, new Estimate(value, new Interval(value, value, 0.95)));
    }

    Row withInner(Interval range) {
      return new Row(caption, mark, estimate, Optional.of(range), counted, highlighted);
    }

    Row withCounted(double share) {
      Optional<Double> known = Double.isNaN(share) ? Optional.empty() : Optional.of(share);
      return new Row(caption, mark, estimate, inner, known, highlighted);
    }

    Row highlightedIf(boolean yes) {
      return new Row(caption, mark, estimate, inner, counted, yes);
    }
  }

  /**
   * A place where lines were left out.
   *
   * @param words how many, and where they are
   */
  record Gap(String words) implements Line {}
}
