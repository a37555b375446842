package org.taketally.answers.adjusted;

import java.util.List;

/**
 * What was decided about a circumstance when a model was suggested.
 *
 * @param kind what was decided
 * @param columns the circumstance; several for {@link Kind#VARIES} and {@link Kind#UNUSED}
 * @param recordedPercent share of the grafts it was recorded for, 0 to 100
 */
public record ModelChoice(Kind kind, List<String> columns, int recordedPercent) {

  /** What was decided. */
  public enum Kind {
    /** Not adjusted for: recorded for too few grafts. */
    RARELY_RECORDED,
    /** Not adjusted for: all grafts are alike in it. */
    ALL_ALIKE,
    /** Adjusted for, level by level. */
    ADJUSTED,
    /** Adjusted for as a curve. */
    AS_CURVE,
    /** Adjusted for as a straight line. */
    AS_LINE,
    /** Groups that could vary, left out: recorded for too few grafts. */
    GROUP_RARELY_RECORDED,
    /** Groups that could vary, left out: nearly every graft has its own. */
    GROUP_OF_ONE,
    /** What rows of several grafts have in common, left out: there are too many rows. */
    TOO_MANY_ROWS,
    /** Recorded columns the model doesn't use unless they are named. */
    UNUSED,
    /** Varying around a common mean. */
    VARIES
  }

  public ModelChoice {
    columns = List.copyOf(columns);
  }

  static ModelChoice of(Kind kind, String column, int recordedPercent) {
    return new ModelChoice(kind, List.of(column), recordedPercent);
  }
}
