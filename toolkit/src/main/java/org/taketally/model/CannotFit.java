package org.taketally.model;

import java.util.List;

/** These records can't answer with this model; the message says why and what to do. */
public final class CannotFit extends RuntimeException {

  private static final long serialVersionUID = 1;

  /** Why. docs/when-a-fit-warns.md has a section for each. */
  public enum Reason {
    /** No cells are left. */
    NO_CELLS,
    /** Every graft took. */
    ALL_TOOK,
    /** No graft took. */
    NONE_TOOK,
    /** A fixed level has 0 or all takes, or a combination of columns splits takes from failures. */
    SEPARATED,
    /** The effects of two or more columns can't be told apart. */
    ALIASED,
    /** A number has too few different values for the curve asked for. */
    TOO_FEW_VALUES,
    /** A column is missing or of the wrong kind. */
    WRONG_COLUMN,
    /** Quadrature nodes asked for with other than one varying column. */
    NODES,
    /** Too many crossed levels for the memory. */
    TOO_LARGE
  }

  private final Reason reason;
  private final transient List<String> columns;

  CannotFit(Reason reason, List<String> columns, String sentence) {
    super(sentence);
    this.reason = reason;
    this.columns = List.copyOf(columns);
  }

  /**
   * Why.
   *
   * @return the reason
   */
  public Reason reason() {
    return reason;
  }

  /**
   * The columns concerned.
   *
   * @return may be empty
   */
  public List<String> columns() {
    return columns == null ? List.of() : columns;
  }
}
