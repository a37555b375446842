package org.taketally.model;

/**
 * Something a reader of the fit must know.
 *
 * @param kind what it is
 * @param column the column concerned, or empty
 * @param sentence in plain words, with the remedy
 */
public record FitWarning(Kind kind, String column, String sentence) {

  /** Kinds of warnings; docs/when-a-fit-warns.md has a section for each. */
  public enum Kind {
    /** A standard deviation is estimated as exactly 0. */
    SPREAD_AT_ZERO,
    /** A column has one level in the cells used and was left out. */
    ONE_LEVEL,
    /** A varying column has so few levels that its spread is hardly known. */
    FEW_LEVELS,
    /** Levels hold so few grafts that Laplace's approximation moves their spread. */
    THIN_LEVELS,
    /** The compared column hardly changes within groups, so it is compared across them. */
    COMPARED_ACROSS,
    /** Cells lacking a needed column were left out. */
    LEFT_OUT,
    /** The search ended before its tolerance was met. */
    NOT_CONVERGED
  }
}
