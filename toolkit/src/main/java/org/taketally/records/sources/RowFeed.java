package org.taketally.records.sources;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Reads raw rows on a thread of its own, in order, so that taking files apart and making sense of
 * rows go on at the same time.
 */
public final class RowFeed implements AutoCloseable {

  private static final int ROWS = 512;
  private static final int BATCHES = 16;
  private static final long PATIENCE_MS = 5000;

  private final List<RowSource> sources;
  private final BlockingQueue<Batch> queue = new ArrayBlockingQueue<>(BATCHES);
  private final Thread thread;

  /**
   * Rows of one source, in order.
   *
   * @param source its number
   * @param rows the rows
   * @param failure what stopped the reading; null if nothing did
   * @param last whether nothing follows
   */
  public record Batch(int source, List<RawRow> rows, Throwable failure, boolean last) {}

  public RowFeed(List<RowSource> sources) {
    this.sources = sources;
    this.thread = new Thread(this::readAll, "taketally-rows");
    thread.setDaemon(true);
    thread.start();
  }

  /** The next batch; throws what stopped the reading. */
  public Batch next() {
    try {
      Batch batch = queue.take();
      if (batch.failure() instanceof RuntimeException failure) {
        throw failure;
      }
      if (batch.failure() instanceof Error failure) {
        throw failure;
      }
      return batch;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new java.util.concurrent.CancellationException("reading was interrupted");
    }
  }

  private void readAll() {
    try {
      for (int source = 0; source < sources.size(); source++) {
        read(source);
      }
      queue.put(new Batch(sources.size(), List.of(), null, true));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void read(int source) throws InterruptedException {
    try (RowSource.Rows rows = sources.get(source).open()) {
      List<RawRow> batch = new ArrayList<>(ROWS);
      for (RawRow row = rows.next(); row != null; row = rows.next()) {
        batch.add(row);
        if (batch.size() == ROWS) {
          queue.put(new Batch(source, batch, null, false));
          batch = new ArrayList<>(ROWS);
        }
      }
      queue.put(new Batch(source, batch, null, false));
    } catch (RuntimeException | Error e) {
      queue.put(new Batch(source, List.of(), e, true));
    }
  }

  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join(PATIENCE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
