package org.taketally.answers.prediction;

import java.util.concurrent.ForkJoinPool;
import java.util.function.Supplier;

/**
 * Runs parallel streams of a library on one thread. Smile seeds a tree's random numbers on the
 * thread that grows it, and a thread waiting for part of a tree may start another: with several
 * threads the same seeds give other trees each time.
 */
final class SingleThreaded {

  private SingleThreaded() {}

  static <T> T call(Supplier<T> work) {
    ForkJoinPool one = new ForkJoinPool(1);
    try {
      return one.submit(work::get).join();
    } finally {
      one.shutdown();
    }
  }
}
