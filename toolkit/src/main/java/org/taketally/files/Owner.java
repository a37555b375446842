package org.taketally.files;

import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Marks work in progress with the process it is of, so that what a lost one left can be told. */
final class Owner {

  private static final AtomicLong COUNT = new AtomicLong();
  private static final Pattern MARK = Pattern.compile("(\\d{1,18})-(\\d{1,18})-(\\d{1,18})");

  private Owner() {}

  /** Process, when it started, and a number. */
  static String mark() {
    ProcessHandle self = ProcessHandle.current();
    return "%d-%d-%d".formatted(self.pid(), start(self), COUNT.incrementAndGet());
  }

  /** Whether the process that made a mark has ended; false if the text is no mark. */
  static boolean isGone(String text) {
    Matcher mark = MARK.matcher(text);
    if (!mark.matches()) {
      return false;
    }
    Optional<ProcessHandle> process = ProcessHandle.of(Long.parseLong(mark.group(1)));
    return process
        .filter(ProcessHandle::isAlive)
        .filter(alive -> start(alive) == 0 || start(alive) == Long.parseLong(mark.group(2)))
        .isEmpty();
  }

  private static long start(ProcessHandle process) {
    return process.info().startInstant().map(Instant::toEpochMilli).orElse(0L);
  }
}
