package org.taketally.notebook.kernel.engine.threads;

import java.io.IOException;
import java.util.concurrent.Callable;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.engine.output.Stopped;

/**
 * Runs the code of cells, each piece on a thread of its own that can be stopped, while the calling
 * thread waits and passes on the questions the code asks. Threads a cell has started live on.
 */
public final class UserThreads {

  /** How long code has to end by itself after an interrupt before it is stopped by force. */
  private static final long GRACE_MILLISECONDS = 200;

  private static final int FORCED_STOPS = 5;

  /** Ends a thread that doesn't react to being interrupted. */
  public interface ForcedStop {
    void stop(Thread thread);
  }

  /** All threads that cells start, unless they ask for another group. */
  private final class CellThreads extends ThreadGroup {

    CellThreads() {
      super("cells");
    }

    @Override
    public void uncaughtException(Thread thread, Throwable thrown) {
      if (Thread.getDefaultUncaughtExceptionHandler() != null || thrown instanceof ThreadDeath) {
        super.uncaughtException(thread, thrown);
      } else {
        uncaught.accept(thread, thrown);
      }
    }
  }

  private final ThreadGroup group = new CellThreads();
  private volatile BiConsumer<Thread, Throwable> uncaught =
      (thread, thrown) -> thrown.printStackTrace();
  private final Output output;
  private final Supplier<String> interruption;
  private Run current;

  /**
   * Threads of one engine.
   *
   * @param output where questions are asked
   * @param interruption why the cell is to stop, null while it isn't
   */
  public UserThreads(Output output, Supplier<String> interruption) {
    this.output = output;
    this.interruption = interruption;
  }

  /**
   * Has exceptions told that end a thread a cell has started.
   *
   * @param handler gets the thread and what ended it
   */
  public void onUncaught(BiConsumer<Thread, Throwable> handler) {
    uncaught = handler;
  }

  /**
   * Runs code and waits for its end.
   *
   * @param code what to run
   * @param loader class loader of the code
   * @return its value
   * @throws Stopped if it was interrupted and ended by that
   * @throws Throwable what the code threw
   */
  public Object run(Callable<?> code, ClassLoader loader) throws Throwable {
    Run run = new Run(code, loader, group);
    synchronized (this) {
      current = run; // from now on an interrupt reaches it; an earlier one is seen here
      String reason = interruption.get();
      if (reason != null) {
        throw new Stopped(reason, new StackTraceElement[0]);
      }
    }
    try {
      return run.await(output);
    } finally {
      synchronized (this) {
        current = null;
      }
    }
  }

  /** Asks the running code to stop, then makes it; returns at once. */
  public synchronized void interrupt(String reason, ForcedStop force) {
    if (current != null) {
      Run run = current;
      new SteadyThread(() -> run.stop(reason, force), "stops a cell").start();
    }
  }

  /** Where the running code is, innermost first; empty while none runs. */
  public StackTraceElement[] stack() {
    Run run;
    synchronized (this) {
      run = current;
    }
    return run == null ? new StackTraceElement[0] : run.thread.getStackTrace();
  }

  /** Asks the user, from any thread, while a cell runs. */
  public String ask(String prompt, boolean secret) throws IOException {
    Run run;
    synchronized (this) {
      run = current;
    }
    if (run == null) {
      throw new IOException("input can be asked for only while a cell runs");
    }
    return run.ask(prompt, secret);
  }

  /** Ends the wait for code that hangs in an attempt to end the process. */
  public synchronized boolean refuseExit() {
    return current != null && current.refuseExit();
  }

  /** One piece of code on its thread. Every field is guarded by the monitor. */
  private static final class Run {

    private final Thread thread;
    private boolean ended;
    private Object value;
    private Throwable failure;
    private Stopped stopped;
    private Asked asked;

    Run(Callable<?> code, ClassLoader loader, ThreadGroup group) {
      thread = new Thread(group, () -> work(code), "cell");
      thread.setContextClassLoader(loader);
    }

    private void work(Callable<?> code) {
      Object result = null;
      Throwable thrown = null;
      try {
        result = code.call();
      } catch (Throwable any) {
        thrown = any;
      }
      end(result, thrown);
    }

    private synchronized void end(Object result, Throwable thrown) {
      if (!ended) {
        value = result;
        failure = thrown;
        ended = true;
        notifyAll();
      }
    }

    Object await(Output output) throws Throwable {
      thread.start();
      for (Asked next = nextQuestion(); next != null; next = nextQuestion()) {
        next.askAt(output);
      }
      synchronized (this) {
        if (failure != null && stopped != null) {
          throw stopped;
        }
        if (failure != null) {
          throw failure;
        }
        return value;
      }
    }

    /** Waits until the code asks something, or ends: then null. */
    private synchronized Asked nextQuestion() throws InterruptedException {
      while (!ended && asked == null) {
        wait(stopped != null ? GRACE_MILLISECONDS : ExitGuard.waitMilliseconds());
        if (ExitGuard.hangsInExit(thread)) {
          refuseExit();
        }
        if (!thread.isAlive()) {
          end(null, new ThreadDeath()); // stopped in the very moment it reported its end
        }
      }
      Asked next = ended ? null : asked;
      asked = null;
      return next;
    }

    String ask(String prompt, boolean secret) throws IOException {
      Asked question = new Asked(prompt, secret, this);
      synchronized (this) {
        asked = question;
        notifyAll();
      }
      return question.answer();
    }

    synchronized boolean isStopping() {
      return stopped != null || ended;
    }

    synchronized boolean refuseExit() {
      if (ended || !ExitGuard.isExiting(thread)) {
        return false;
      }
      ExitRefused refused = new ExitRefused("This call of a library");
      refused.setStackTrace(thread.getStackTrace());
      end(null, refused);
      return true;
    }

    void stop(String reason, ForcedStop force) {
      synchronized (this) {
        stopped = new Stopped(reason, thread.getStackTrace());
      }
      thread.interrupt();
      for (int attempt = 0; attempt <= FORCED_STOPS && !endsSoon(); attempt++) {
        force.stop(thread);
      }
      if (!endsSoon()) {
        abandon(reason);
      }
    }

    /** Code that catches everything can't be stopped; the cell ends, its thread goes on. */
    private synchronized void abandon(String reason) {
      if (!ended) {
        String more = reason + ", but its code catches every error and runs on; restart the kernel";
        stopped = new Stopped(more, stopped.getStackTrace());
        end(null, stopped);
      }
    }

    private synchronized boolean endsSoon() {
      long end = System.nanoTime() + GRACE_MILLISECONDS * 1_000_000;
      try {
        for (long left = GRACE_MILLISECONDS; !ended && left > 0; ) {
          wait(left);
          left = (end - System.nanoTime()) / 1_000_000;
        }
        return ended;
      } catch (InterruptedException nobodyDoes) {
        return true;
      }
    }
  }

  /** A question on its way to the user. */
  private static final class Asked {

    private final String prompt;
    private final boolean secret;
    private final Run run;
    private String line;
    private IOException refused;
    private boolean answered;

    Asked(String prompt, boolean secret, Run run) {
      this.prompt = prompt;
      this.secret = secret;
      this.run = run;
    }

    void askAt(Output output) {
      String typed = null;
      IOException problem = null;
      try {
        typed = output.ask(prompt, secret, run::isStopping);
      } catch (IOException nobody) {
        problem = nobody;
      }
      synchronized (this) {
        line = typed;
        refused = problem;
        answered = true;
        notifyAll();
      }
    }

    synchronized String answer() throws IOException {
      try {
        while (!answered) {
          wait();
        }
      } catch (InterruptedException stopped) {
        Thread.currentThread().interrupt();
        throw new IOException("the cell was stopped while it waited for input", stopped);
      }
      if (refused != null) {
        throw new IOException(refused.getMessage(), refused);
      }
      return line;
    }
  }
}
