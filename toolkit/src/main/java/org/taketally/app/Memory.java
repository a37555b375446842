package org.taketally.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Memory of this process. */
final class Memory {

  private Memory() {}

  /** Highest so far, in MB: of the process where the system tells, else of the heap now. */
  static long peakMegabytes() {
    try {
      for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
        if (line.startsWith("VmHWM:")) {
          return Long.parseLong(line.replaceAll("[^0-9]", "")) / 1024;
        }
      }
    } catch (IOException elsewhere) {
      // No such file on other systems; the heap is the next best.
    }
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) >> 20;
  }
}
