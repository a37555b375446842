package org.taketally.notebook.kernel.engine.output;

import java.util.Optional;

/**
 * How a cell ended.
 *
 * @param value the value of its last expression, empty if it has none to show
 * @param error what went wrong, empty if nothing
 */
public record CellResult(Optional<Bundle> value, Optional<CellError> error) {

  public static CellResult nothing() {
    return new CellResult(Optional.empty(), Optional.empty());
  }

  public static CellResult of(Bundle value) {
    return new CellResult(Optional.of(value), Optional.empty());
  }

  public static CellResult failed(CellError error) {
    return new CellResult(Optional.empty(), Optional.of(error));
  }
}
