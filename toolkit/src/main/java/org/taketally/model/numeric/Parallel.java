package org.taketally.model.numeric;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Runs numbered pieces of work. What is in a piece never depends on the number of threads. */
public record Parallel(int threads) {

  public void run(int pieces, IntConsumer piece) {
    if (threads == 1 || pieces == 1) {
      for (int i = 0; i < pieces; i++) {
        piece.accept(i);
      }
    } else {
      IntStream.range(0, pieces).parallel().forEach(piece);
    }
  }
}
