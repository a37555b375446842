package org.taketally.notebook.runner;

import com.google.gson.JsonObject;
import org.taketally.notebook.kernel.engine.output.CellResult;

/** Whatever runs the cells of one notebook: an engine here, or a kernel in a process of its own. */
interface CellEngine extends AutoCloseable {

  /** Runs a cell; printed text and displays go to the outputs, result and error are given back. */
  CellResult run(int count, String code);

  /** Stops the running cell. May be called from any thread. */
  void interrupt();

  /** The entry {@code language_info} of the notebook's metadata. */
  JsonObject languageInfo();

  @Override
  void close();
}
