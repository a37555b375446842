package org.taketally.notebook.runner;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.CellResult;

/** Interrupts a cell that takes too long, and says so in its error. */
final class TimeLimit implements AutoCloseable {

  private final Thread alarm;
  private final Optional<Duration> limit;
  private volatile boolean passed;

  TimeLimit(Optional<Duration> limit, CellEngine engine) {
    this.limit = limit;
    alarm = new Thread(() -> limit.ifPresent(time -> wait(time, engine)), "cell time limit");
    alarm.setDaemon(true);
    alarm.start();
  }

  private void wait(Duration time, CellEngine engine) {
    try {
      Thread.sleep(time.toMillis());
      passed = true;
      engine.interrupt();
    } catch (InterruptedException inTime) {
      // the cell has ended
    }
  }

  CellResult applyTo(CellResult result) {
    if (!passed || result.error().isEmpty()) {
      return result;
    }
    CellError error = result.error().get();
    String reason = "the cell took longer than its time limit of " + seconds() + " s";
    List<String> lines = new ArrayList<>(List.of(reason));
    lines.addAll(error.traceback());
    return new CellResult(result.value(), Optional.of(new CellError(error.name(), reason, lines)));
  }

  private String seconds() {
    String text = String.valueOf(limit.orElseThrow().toMillis() / 1000.0);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }

  @Override
  public void close() {
    alarm.interrupt();
  }
}
