package org.taketally.app;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Locale;

/** Wall and CPU time of the whole process since it was started. */
final class Stopwatch {

  /**
   * What was taken.
   *
   * @param cpuSeconds of all threads, compiler and garbage collector included
   * @param wallSeconds by the clock
   */
  record Times(double cpuSeconds, double wallSeconds) {
    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%.2f s CPU, %.2f s wall", cpuSeconds, wallSeconds);
    }
  }

  private static final OperatingSystemMXBean SYSTEM =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private final long wall = System.nanoTime();
  private final long cpu = SYSTEM.getProcessCpuTime();

  private Stopwatch() {}

  static Stopwatch start() {
    return new Stopwatch();
  }

  Times stop() {
    return new Times((SYSTEM.getProcessCpuTime() - cpu) / 1e9, (System.nanoTime() - wall) / 1e9);
  }
}
