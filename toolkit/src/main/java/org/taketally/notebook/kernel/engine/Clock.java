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
  private Thread alarm;

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
    if (alarm != null) {
      alarm.interrupt();
      alarm = null;
    }
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
    alarm =
        new Thread(
            () -> {
              try {
                Thread.sleep((long) (seconds * 1000));
                interrupt("the cell took longer than its limit of %s s".formatted(seconds));
              } catch (InterruptedException ended) {
                // in time
              }
            },
            "cell limit");
    alarm.setDaemon(true);
    alarm.start();
  }
}
