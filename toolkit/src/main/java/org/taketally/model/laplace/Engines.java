package org.taketally.model.laplace;

import java.util.Deque;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.function.Function;

/** Lends engines on the same cells to several threads, one each at a time. */
public final class Engines {

  private final BlockLaplace first;
  private final Deque<BlockLaplace> idle = new ConcurrentLinkedDeque<>();

  public Engines(BlockLaplace first) {
    this.first = first;
  }

  /**
   * Does work with an engine of its own.
   *
   * @param work must first say where to start, since the engine has been elsewhere, and give
   *     nothing away that still needs the engine
   */
  public <T> T lend(Function<BlockLaplace, T> work) {
    BlockLaplace waiting = idle.poll();
    BlockLaplace own = waiting == null ? first.another() : waiting;
    T result = work.apply(own);
    idle.push(own);
    return result;
  }
}
