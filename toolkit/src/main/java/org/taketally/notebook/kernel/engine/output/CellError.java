package org.taketally.notebook.kernel.engine.output;

import java.util.ArrayList;
import java.util.List;

/**
 * What went wrong in a cell.
 *
 * @param name class of the exception, or a word of ours such as {@code CompileError}
 * @param message what it says, empty if nothing
 * @param traceback lines to show, coloured with ANSI escapes that read well on light and dark
 */
public record CellError(String name, String message, List<String> traceback) {

  /** Name of the error of a cell that was interrupted. */
  public static final String INTERRUPTED = "Interrupted";

  public static final String WHEN_STOPPED = "the cell was stopped";

  public CellError {
    traceback = List.copyOf(traceback);
  }

  /** The same error with more lines below. */
  CellError saying(List<String> more) {
    List<String> lines = new ArrayList<>(traceback);
    lines.addAll(more);
    return new CellError(name, message, lines);
  }
}
