package org.taketally.notebook.kernel.engine;

import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.engine.threads.SteadyThread;

/**
 * Tells the person at the notebook what a long cell is at, in one place that changes as it goes on
 * and is emptied at the end. Says nothing where nobody watches, as when a notebook is run as a
 * batch.
 */
final class LongWork {

  /** What is waited for before the first word, and between words. */
  record Pace(long firstMilliseconds, long everyMilliseconds) {

    static Pace usual() {
      return new Pace(2_000, 1_000);
    }
  }

  private final Output output;
  private final Supplier<StackTraceElement[]> running;
  private final Function<StackTraceElement[], String> naming;
  private final Pace pace;
  private String shown = "";
  private boolean atWork;
  private long began;

  /**
   * For all cells of an engine.
   *
   * @param output where it is told
   * @param running where the running code is
   * @param naming what code there is at, in a few words; empty text if that isn't known
   * @param pace how often
   */
  LongWork(
      Output output,
      Supplier<StackTraceElement[]> running,
      Function<StackTraceElement[], String> naming,
      Pace pace) {
    this.output = output;
    this.running = running;
    this.naming = naming;
    this.pace = pace;
  }

  /** Begins to watch, on a thread of its own. */
  LongWork start() {
    new SteadyThread(this::watch, "cell progress").start();
    return this;
  }

  synchronized void cellBegins() {
    atWork = output.isWatched();
    began = System.nanoTime();
    notifyAll();
  }

  /** From here on nothing more is told of this cell. */
  synchronized void cellEnds() {
    atWork = false;
    if (!shown.isEmpty()) {
      output.update(words("").named(shown));
      shown = "";
    }
    notifyAll();
  }

  private synchronized void watch() {
    try {
      while (true) {
        while (!atWork) {
          wait();
        }
        long next = shown.isEmpty() ? pace.firstMilliseconds : pace.everyMilliseconds;
        long cell = began;
        wait(next);
        if (atWork && cell == began) {
          tell();
        }
      }
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }

  private void tell() {
    String doing = naming.apply(running.get());
    if (doing.isEmpty() && shown.isEmpty()) {
      return;
    }
    long seconds = (System.nanoTime() - began) / 1_000_000_000;
    Bundle words = words("%s (%d s)".formatted(doing.isEmpty() ? "working" : doing, seconds));
    if (shown.isEmpty()) {
      shown = UUID.randomUUID().toString();
      output.display(words.named(shown));
    } else {
      output.update(words.named(shown));
    }
  }

  private static Bundle words(String text) {
    String escaped = text.replace("&", "&amp;").replace("<", "&lt;");
    String html = text.isEmpty() ? "" : "<p style=\"opacity:.7\">" + escaped + "</p>";
    return Bundle.text("text/html", html).withPlainText(text);
  }
}
