package org.taketally.notebook.kernel.engine.threads;

import java.util.Arrays;
import java.util.function.BooleanSupplier;

/**
 * Keeps the process alive when a library that a cell has called ends it. {@code System.exit}
 * written in a cell never gets here, see {@link ExitRefused}; this is the net below: a shutdown
 * hook that holds the exit for ever, with the calling thread, while a cell runs.
 */
public final class ExitGuard {

  private static final long CHECK_MILLISECONDS = 100;

  private static boolean installed;
  private static volatile BooleanSupplier refusal;
  private static volatile boolean holding;

  private ExitGuard() {}

  /**
   * Holds exits from now on.
   *
   * @param refuse tells running code that it can't end the process; false if none runs
   */
  public static synchronized void guard(BooleanSupplier refuse) {
    refusal = refuse;
    if (!installed) {
      installed = true;
      Runtime.getRuntime().addShutdownHook(new Thread(ExitGuard::hold, "exit guard"));
    }
  }

  private static void hold() {
    BooleanSupplier refuse = refusal;
    if (refuse == null || !refuse.getAsBoolean()) {
      return;
    }
    holding = true;
    while (true) {
      try {
        Thread.sleep(Long.MAX_VALUE);
      } catch (InterruptedException again) {
        Thread.currentThread().isInterrupted();
      }
    }
  }

  /**
   * Whether an exit was held, so that only {@link #end} can end the process.
   *
   * @return true once a library called by a cell tried to end the process
   */
  public static boolean isHolding() {
    return holding;
  }

  /**
   * Ends the process, even when an earlier exit is being held.
   *
   * @param status the exit status
   */
  public static void end(int status) {
    if (holding) {
      Runtime.getRuntime().halt(status);
    }
    System.exit(status);
  }

  /** Once an exit is held, later ones hang before any hook runs, so waiting must look. */
  public static long waitMilliseconds() {
    return holding ? CHECK_MILLISECONDS : 0;
  }

  public static boolean hangsInExit(Thread thread) {
    return holding && isExiting(thread);
  }

  public static boolean isExiting(Thread thread) {
    return Arrays.stream(thread.getStackTrace())
        .anyMatch(frame -> frame.getClassName().equals("java.lang.Shutdown"));
  }
}
