package org.taketally.notebook.runner;

import java.util.Optional;
import org.taketally.notebook.kernel.engine.output.CellError;

/**
 * What came of a run.
 *
 * @param notebook the executed notebook, up to the cell that failed if one did
 * @param cellsRun code cells that were run
 * @param failure the first cell that failed although it wasn't allowed to, empty if none
 */
public record RunReport(Notebook notebook, int cellsRun, Optional<FailedCell> failure) {

  /**
   * A cell that failed.
   *
   * @param count number shown beside it
   * @param source what it holds
   * @param error what went wrong
   */
  public record FailedCell(int count, String source, CellError error) {

    /**
     * The failure in plain lines: which cell, what it holds, what went wrong.
     *
     * @return text for a terminal, without colours
     */
    public String sentence() {
      StringBuilder text = new StringBuilder("cell [" + count + "] failed:\n\n");
      source.lines().forEach(line -> text.append("    ").append(line).append('\n'));
      text.append('\n');
      error.traceback().stream()
          .map(line -> line.replaceAll("\u001b\\[[0-9;]*m", ""))
          .forEach(line -> text.append(line).append('\n'));
      return text.toString();
    }
  }
}
