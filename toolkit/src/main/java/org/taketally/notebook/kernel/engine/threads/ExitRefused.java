package org.taketally.notebook.kernel.engine.threads;

import java.util.Arrays;

/** Thrown in place of ending the process when a cell calls {@code System.exit}. */
public final class ExitRefused extends Error {

  private static final long serialVersionUID = 1L;

  ExitRefused(String call) {
    super(
        call
            + " would end the kernel and lose every variable, so it was not done."
            + " To end the kernel, restart it or shut it down from the menu.");
  }

  /**
   * Stands in for {@link System#exit} in the code of cells.
   *
   * @param status the exit status asked for
   */
  @SuppressWarnings("DoNotCallSuggester") // takes the place of System.exit, which is called
  public static void exit(int status) {
    ExitRefused refused = new ExitRefused("System.exit(" + status + ")");
    StackTraceElement[] frames = refused.getStackTrace();
    refused.setStackTrace(Arrays.copyOfRange(frames, 1, frames.length));
    throw refused;
  }
}
