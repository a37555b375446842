package org.taketally.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalLong;

/** Memory of this process. */
final class Memory {

  private Memory() {}

  /** Highest so far, in MB: of the process where the system tells, else of the heap now. */
  static long peakMegabytes() {
    Runtime runtime = Runtime.getRuntime();
    return peakMegabytes("self")
        .orElseGet(() -> (runtime.totalMemory() - runtime.freeMemory()) >> 20);
  }

  /**
   * Highest so far of a process.
   *
   * @param process its number, or {@code self}
   * @return MB; empty where the system doesn't tell, or it has ended
   */
  static OptionalLong peakMegabytes(String process) {
    try {
      for (String line : Files.readAllLines(Path.of("/proc", process, "status"))) {
        if (line.startsWith("VmHWM:")) {
          return OptionalLong.of(Long.parseLong(line.replaceAll("[^0-9]", "")) / 1024);
        }
      }
    } catch (IOException elsewhere) {
      // No such file on other systems.
    }
    return OptionalLong.empty();
  }
}
