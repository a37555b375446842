package org.taketally.notebook.kernel.engine.threads;

import java.util.function.Consumer;
import org.taketally.notebook.kernel.engine.output.Output;

/** Watches over the running cell: interrupts from outside, time limit, time taken. */
public final class Clock {

  private final Output output;
  private final Consumer<String> stop;
  private String reason;
  private long began;
  private boolean running;
  private boolean telling;

  /** When to stop the cell, by {@link System#nanoTime}; 0 for never. */
  private long end;

  /**
   * A clock for all cells of an engine.
   *
   * @param output where the time taken is told
   * @param stop stops the running code, for the reason given
   */
  public Clock(Output output, Consumer<String> stop) {
    this.output = output;
    this.stop = stop;
  }

  public synchronized void cellBegins() {
    running = true;
    telling = false;
    began = System.nanoTime();
  }

  public synchronized void cellEnds() {
    running = false;
    reason = null;
    end = 0;
    notifyAll();
    if (telling) {
      double seconds = (System.nanoTime() - began) / 1e9;
      output.print("stdout", "this cell took %.3g s%n".formatted(seconds));
    }
  }

  public void interrupt(String why) {
    synchronized (this) {
      if (!running) {
        return;
      }
      reason = why;
    }
    stop.accept(why);
  }

  public synchronized boolean isInterrupted() {
    return reason != null;
  }

  public synchronized String reason() {
    return reason;
  }

  /** Has the cell tell how long it took. */
  public synchronized void tellTime() {
    telling = true;
  }

  /**
   * Stops the cell later.
   *
   * @param seconds from now, above 0
   */
  public synchronized void limit(double seconds) {
    long limit = System.nanoTime() + (long) (seconds * 1e9);
    end = limit;
    String why = "the cell took longer than its limit of %s s".formatted(seconds);
    new SteadyThread(() -> watch(limit, why), "cell limit").start();
  }

  private void watch(long limit, String why) {
    if (passes(limit)) {
      interrupt(why);
    }
  }

  /** Waits for a limit; false if the cell ends before, or is given another one. */
  private synchronized boolean passes(long limit) {
    try {
      for (long left = 1; left > 0; left = (limit - System.nanoTime()) / 1_000_000) {
        if (end != limit) {
          return false;
        }
        wait(left);
      }
      return end == limit;
    } catch (InterruptedException never) {
      return false;
    }
  }
}
