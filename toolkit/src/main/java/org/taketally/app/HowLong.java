package org.taketally.app;

import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import org.taketally.records.RecordsCheck;
import org.taketally.wording.Words;

/**
 * Says beforehand how long a season page takes, between a machine that is quiet and this one as
 * busy as it is, then what is left by how long the first half took, then how long all took.
 */
final class HowLong {

  /**
   * Seconds of {@code summary} on two quiet cores, as docs/performance.md says of the demo: this
   * many whatever the records, and so many more a thousand rows; of these the answers take a part,
   * and the rest is advice and pages.
   */
  static final double LEAST = 2;

  static final double A_THOUSAND = 2;

  private static final double ANSWERS = 0.6;

  /** Even a quiet machine may be this much slower than the one measured. */
  private static final double SLOWER = 2;

  /** Threads that work at a time. */
  private static final double THREADS = 2;

  private static final long MINUTES = 120;

  private final PrintWriter out;
  private final long start = System.nanoTime();

  HowLong(PrintWriter out) {
    this.out = out;
  }

  /** Before the answers. */
  void answering(RecordsCheck check) {
    say(forecast(check.provenance().rowsKept(), busy()));
  }

  /** After the answers and before advice and pages. */
  void writing() {
    long left = Math.max(1, Math.round(seconds() * (1 - ANSWERS) / ANSWERS));
    say(
        "working out what to do differently, and writing the season page and its handout: about "
            + Words.count(left, "second")
            + " more");
  }

  /** At the end. */
  void done() {
    say("done in " + Words.count(Math.round(seconds()), "second"));
  }

  private void say(String line) {
    out.println(line);
    out.flush();
  }

  private double seconds() {
    return (System.nanoTime() - start) / 1e9;
  }

  /** How many times longer than on two quiet cores work takes here and now; at least 1. */
  private static double busy() {
    int cores = Runtime.getRuntime().availableProcessors();
    double load = Math.max(0, ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    return Math.max(1, (load + THREADS) / cores);
  }

  /**
   * What is said beforehand.
   *
   * @param rows kept of the records
   * @param busy how many times longer than on two quiet cores work takes
   * @return a few words with a range of seconds, or minutes
   */
  static String forecast(long rows, double busy) {
    double quiet = LEAST + A_THOUSAND * rows / 1000;
    long most = Math.round(quiet * Math.max(SLOWER, busy));
    return most < MINUTES
        ? "working out answers, advice and pages: about %d to %d seconds"
            .formatted(Math.round(quiet), most)
        : "working out answers, advice and pages: about %s to %d minutes"
            .formatted(minutes(quiet), Math.round(Math.ceil(most / 60.0)));
  }

  private static String minutes(double seconds) {
    return seconds < 60 ? "half" : String.valueOf((long) (seconds / 60));
  }
}
