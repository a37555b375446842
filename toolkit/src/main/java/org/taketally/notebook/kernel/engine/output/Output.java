package org.taketally.notebook.kernel.engine.output;

import java.io.IOException;
import org.taketally.notebook.kernel.engine.Engine;

/** Where a cell's output goes, and where its questions are asked. */
public interface Output {

  /**
   * Text printed by a cell or by a thread one has started.
   *
   * @param stream {@code stdout} or {@code stderr}
   * @param text what was printed, possibly part of a line
   */
  void print(String stream, String text);

  /**
   * A value shown while the cell runs.
   *
   * @param bundle its forms
   */
  void display(Bundle bundle);

  /**
   * Replaces what was shown under the same display id.
   *
   * @param bundle its new forms, with a display id
   */
  void update(Bundle bundle);

  /**
   * Clears the cell's output.
   *
   * @param wait whether to clear only when new output comes
   */
  void clear(boolean wait);

  /**
   * Text to show beside the notebook, as documentation asked for with {@code name?}.
   *
   * @param bundle its forms
   */
  void page(Bundle bundle);

  /**
   * Asks the user a question. Called on the thread that called {@link Engine#run}.
   *
   * @param prompt the question
   * @param secret whether the answer must not be shown
   * @param question tells when the cell was interrupted, so that waiting ends
   * @return the line typed, without its end
   * @throws IOException if nobody can be asked
   */
  String ask(String prompt, boolean secret, Question question) throws IOException;

  /**
   * Whether a person sits at the notebook, who may like to know what takes so long.
   *
   * @return false where it is run as a batch
   */
  default boolean isWatched() {
    return false;
  }

  /** An open question. */
  interface Question {

    /**
     * Whether nobody waits for the answer any more.
     *
     * @return true once the cell was interrupted
     */
    boolean withdrawn();
  }
}
