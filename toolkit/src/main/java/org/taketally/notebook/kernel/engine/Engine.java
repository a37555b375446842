package org.taketally.notebook.kernel.engine;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.CellResult;
import org.taketally.notebook.kernel.engine.output.Console;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.engine.output.Rendering;
import org.taketally.notebook.kernel.engine.source.Completeness;
import org.taketally.notebook.kernel.engine.threads.Clock;
import org.taketally.notebook.kernel.engine.threads.ExitGuard;
import org.taketally.notebook.kernel.engine.threads.SteadyThread;
import org.taketally.notebook.kernel.engine.threads.UserThreads;

/**
 * Runs cells of Java one after the other and keeps their variables. Only one engine at a time,
 * since it takes over the standard streams. {@link #interrupt} may be called from any thread,
 * everything else from one.
 *
 * <pre>{@code
 * try (Engine engine = Engine.start(EngineOptions.usual(), output)) {
 *   CellResult result = engine.run(1, "int grafts = 41 + 9;\ngrafts");
 * }
 * }</pre>
 */
public final class Engine implements AutoCloseable, CellFunctions.Stage {

  private final Output output;
  private final UserThreads threads;
  private final Console console;
  private final Rendering rendering;
  private final FutureTask<Workspace> starting;
  private final Clock clock;
  private final LongWork longWork;
  private boolean outOfMemory;

  private Engine(EngineOptions options, Output output) {
    this.output = output;
    clock = new Clock(output, this::stopRunningCode);
    threads = new UserThreads(output, clock::reason);
    longWork = new LongWork(output, threads::stack, options.doing(), LongWork.Pace.usual()).start();
    console = new Console(output, threads::ask);
    rendering = new Rendering(options.displays(), options.png());
    starting = new FutureTask<>(() -> new Workspace(options, threads));
    threads.onUncaught(this::tell);
    ExitGuard.guard(threads::refuseExit);
    CellFunctions.belongTo(this);
  }

  /**
   * Starts an engine. Returns at once; the first cell waits until it is ready.
   *
   * @param options what to begin with
   * @param output where output goes
   * @return a running engine
   */
  public static Engine start(EngineOptions options, Output output) {
    Engine engine = new Engine(options, output);
    new SteadyThread(engine::begin, "engine start").start();
    return engine;
  }

  private void begin() {
    starting.run();
    Workspace ready = workspace();
    for (String name : ready.notImported()) {
      output.print("stderr", "nothing to import at " + name + "\n");
    }
    ready.packages(); // so that the first completion needn't look for them
  }

  /** Says what ended a thread that a cell has started. */
  private void tell(Thread thread, Throwable thrown) {
    CellError error = workspace().errors.thrown(thrown, null);
    String heading = "Exception in thread \"" + thread.getName() + "\" ";
    String text = heading + String.join("\n", error.traceback()) + "\n";
    output.print("stderr", text.replaceAll("\u001b\\[[0-9;]*m", "")); // as any program's
  }

  private Workspace workspace() {
    try {
      return starting.get();
    } catch (ExecutionException failure) {
      throw new IllegalStateException("the engine did not start: " + failure.getCause(), failure);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the engine was not awaited", stopped);
    }
  }

  /**
   * Runs a cell.
   *
   * @param number the cell's number as shown beside it, 0 if it has none
   * @param code the cell
   * @return how it ended
   */
  public CellResult run(int number, String code) {
    clock.cellBegins();
    longWork.cellBegins();
    try {
      return result(number, code);
    } finally {
      console.flush();
      longWork.cellEnds();
      if (outOfMemory) {
        outOfMemory = false;
        workspace().control.forgetOutcome();
        System.gc(); // gives memory back to the system, too
      }
      clock.cellEnds();
    }
  }

  private CellResult result(int number, String code) {
    Evaluation evaluation = new Evaluation(workspace(), inspector(), output, clock);
    Optional<CellError> error = evaluation.run(number, code);
    if (error.isPresent()) {
      outOfMemory = error.get().name().equals(OutOfMemoryError.class.getName());
      return CellResult.failed(error.get());
    }
    return evaluation.hasValue() ? shown(evaluation) : CellResult.nothing();
  }

  private CellResult shown(Evaluation evaluation) {
    Object value = evaluation.value();
    try {
      return CellResult.of((Bundle) workspace().control.call(() -> rendering.of(value)));
    } catch (Throwable thrown) {
      return CellResult.failed(evaluation.failureToShow(thrown));
    }
  }

  /**
   * What could stand at a place.
   *
   * @param code the cell
   * @param cursor the place, in UTF-16 units
   * @return matches and what they replace
   */
  public Completions complete(String code, int cursor) {
    return Completions.at(cursor, code, workspace());
  }

  /**
   * What is known about the name at a place.
   *
   * @param code the cell
   * @param cursor in, just behind or before the name, in UTF-16 units
   * @param more whether to tell at length
   * @return type, value or documentation, or empty if nothing is known
   */
  public Optional<Bundle> inspect(String code, int cursor, boolean more) {
    return inspector().at(cursor, code, more);
  }

  private Inspector inspector() {
    return new Inspector(workspace(), rendering);
  }

  /**
   * Whether code can be run as it stands.
   *
   * @param code the cell
   * @return complete, incomplete with the next line's indent, or invalid
   */
  public Completeness completeness(String code) {
    return Completeness.of(code, workspace().analysis);
  }

  /** Stops the running cell; its variables are kept. Returns at once. */
  public void interrupt() {
    clock.interrupt(CellError.WHEN_STOPPED);
  }

  private void stopRunningCode(String reason) {
    if (starting.isDone()) {
      workspace().control.interrupt(reason);
    }
  }

  @Override
  public Output output() {
    return output;
  }

  @Override
  public Bundle render(Object value, String... mediaTypes) {
    return rendering.as(value, List.of(mediaTypes));
  }

  @Override
  public String ask(String prompt, boolean secret) throws IOException {
    return threads.ask(prompt, secret);
  }

  @Override
  public void close() {
    workspace().close();
    console.close();
  }
}
