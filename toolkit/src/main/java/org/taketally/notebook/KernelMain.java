package org.taketally.notebook;

import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.taketally.notebook.kernel.Kernel;
import org.taketally.notebook.kernel.KernelSetup;
import org.taketally.notebook.kernel.engine.threads.SteadyThread;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/**
 * The kernel's own process, as Jupyter starts it: one argument, the connection file. Ends when
 * asked to, on SIGTERM, or when the process that started it is gone.
 */
public final class KernelMain {

  /**
   * System property with the id of the process without which this one is of no use; Jupyter says it
   * by the environment variable {@code JPY_PARENT_PID}.
   */
  public static final String PARENT = "taketally.parent";

  /**
   * How Java is to run a kernel: half of the machine's memory at most, and what a cell has left is
   * given back.
   */
  public static final List<String> JAVA_OPTIONS =
      List.of(
          "-XX:+UseSerialGC",
          "-XX:MaxRAMPercentage=50",
          "-XX:MinHeapFreeRatio=20",
          "-XX:MaxHeapFreeRatio=40",
          "-XX:-ShrinkHeapInSteps",
          "-Djava.awt.headless=true");

  private static final long PARENT_CHECK_NANOSECONDS = 1_000_000_000;
  private static final int FAILED = 1;

  private KernelMain() {}

  /**
   * Starts a kernel and serves until it is shut down.
   *
   * @param arguments the connection file's place
   */
  public static void main(String[] arguments) {
    if (arguments.length != 1) {
      System.err.println("expected one argument, the connection file that Jupyter writes");
      System.exit(2);
    }
    KernelSetup setup = ToolkitKernel.setup();
    Kernel kernel = start(Path.of(arguments[0]), setup);
    onSignal("INT", kernel::interrupt);
    onSignal("TERM", kernel::requestShutdown);
    parent().ifPresent(parent -> watch(parent, kernel));
    awaitShutdown(kernel);
    kernel.close();
    // threads of cells may still run, or hang in an exit
    Runtime.getRuntime().halt(kernel.hasFailed() ? FAILED : 0);
  }

  /** A cell may interrupt this thread; that is no reason to end. */
  private static void awaitShutdown(Kernel kernel) {
    while (true) {
      try {
        kernel.awaitShutdown();
        return;
      } catch (InterruptedException byCell) {
        // wait on
      }
    }
  }

  private static Kernel start(Path connectionFile, KernelSetup setup) {
    try {
      return Kernel.start(ConnectionFile.read(connectionFile), setup);
    } catch (IOException | IllegalArgumentException unusable) {
      setup.log().accept(unusable.getMessage());
      System.exit(2);
      throw new IllegalStateException(unusable);
    }
  }

  /**
   * Handles a signal. By name, since the compiler warns of the class {@code sun.misc.Signal}, for
   * which there is no other.
   */
  private static void onSignal(String name, Runnable action) {
    try {
      Class<?> signal = Class.forName("sun.misc.Signal");
      Class<?> handler = Class.forName("sun.misc.SignalHandler");
      Object calls =
          Proxy.newProxyInstance(
              KernelMain.class.getClassLoader(),
              new Class<?>[] {handler},
              (proxy, method, values) -> {
                action.run();
                return null;
              });
      signal
          .getMethod("handle", signal, handler)
          .invoke(null, signal.getConstructor(String.class).newInstance(name), calls);
    } catch (ReflectiveOperationException | IllegalArgumentException unavailable) {
      // then Java does with this signal what it always does
    }
  }

  /** Whether the process that started this one lives; empty if it isn't known. */
  private static Optional<BooleanSupplier> parent() {
    String ours = System.getProperty(PARENT);
    if (ours != null) {
      return Optional.of(() -> process(ours).isPresent()); // gone already: then end at once
    }
    String id = System.getenv("JPY_PARENT_PID");
    return id == null || process(id).isEmpty()
        ? Optional.empty()
        : Optional.of(() -> process(id).isPresent());
  }

  private static Optional<ProcessHandle> process(String id) {
    return id.matches("\\d{1,18}")
        ? ProcessHandle.of(Long.parseLong(id)).filter(ProcessHandle::isAlive)
        : Optional.empty();
  }

  private static void watch(BooleanSupplier parentLives, Kernel kernel) {
    Runnable watching =
        () -> {
          while (parentLives.getAsBoolean()) {
            LockSupport.parkNanos(PARENT_CHECK_NANOSECONDS);
          }
          kernel.requestShutdown();
        };
    new SteadyThread(watching, "watches the parent process").start();
  }
}
