package org.taketally.notebook.kernel.engine;

import java.util.function.Consumer;

/** Watches over the running cell: interrupts from outside, time limit, time taken. */
final class Clock implements Commands.CellClock {

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
  Clock(Output output, Consumer<String> stop) {
    this.output = output;
    this.stop = stop;
  }

  synchronized void cellBegins() {
    running = true;
    telling = false;
    began = System.nanoTime();
  }

  synchronized void cellEnds() {
    running = false;
    reason = null;
    end = 0;
    notifyAll();
    if (telling) {
      double seconds = (System.nanoTime() - began) / 1e9;
      output.print("stdout", "this cell took %.3g s%n".formatted(seconds));
    }
  }

  void interrupt(String why) {
    synchronized (this) {
      if (!running) {
        return;
      }
      reason = why;
    }
    stop.accept(why);
  }

  synchronized boolean isInterrupted() {
    return reason != null;
  }

  synchronized String reason() {
    return reason;
  }

  @Override
  public synchronized void tellTime() {
    telling = true;
  }

  @Override
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
