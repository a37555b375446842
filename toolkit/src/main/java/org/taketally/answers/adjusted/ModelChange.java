package org.taketally.answers.adjusted;

import java.util.Optional;
import org.taketally.model.CannotFit;

/**
 * A change to the model asked for, because the records couldn't carry it.
 *
 * @param kind what was done
 * @param column the column it was done to
 * @param cause what the fit said of it; empty where the fit wasn't asked
 */
public record ModelChange(Kind kind, String column, Optional<CannotFit> cause) {

  /** What was done to a column. */
  public enum Kind {
    /** Pairings were left out: too few cultivars stood on more than one rootstock. */
    PAIRINGS_LEFT_OUT,
    /** A column with a level of which none or all took varies instead of being adjusted for. */
    VARIES_INSTEAD,
    /** A number with too few different values for a curve is a straight line instead. */
    LINE_INSTEAD,
    /** A column that says the same as others was left out. */
    LEFT_OUT
  }
}
