package org.taketally.notebook;

import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.Optional;
import org.taketally.notebook.kernel.Kernel;
import org.taketally.notebook.kernel.KernelSetup;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/**
 * The kernel's own process, as Jupyter starts it: one argument, the connection file. Ends when
 * asked to, on SIGTERM, or when the process that started it is gone.
 */
public final class KernelMain {

  private static final long PARENT_CHECK_MILLISECONDS = 1000;

  private KernelMain() {}

  /**
   * Starts a kernel and serves until it is shut down.
   *
   * @param arguments the connection file's place
   * @throws InterruptedException never, in practice
   */
  public static void main(String[] arguments) throws InterruptedException {
    if (arguments.length != 1) {
      System.err.println("expected one argument, the connection file that Jupyter writes");
      System.exit(2);
    }
    KernelSetup setup = ToolkitKernel.setup();
    Kernel kernel = start(Path.of(arguments[0]), setup);
    onSignal("INT", kernel::interrupt);
    onSignal("TERM", kernel::requestShutdown);
    parent().ifPresent(parent -> watch(parent, kernel));
    kernel.awaitShutdown();
    kernel.close();
    Runtime.getRuntime().halt(0); // threads of cells may still run, or hang in an exit
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

  /** The frontend's process, if it told and it lives. */
  private static Optional<ProcessHandle> parent() {
    String id = System.getenv("JPY_PARENT_PID");
    return id == null || !id.matches("\\d{1,18}")
        ? Optional.empty()
        : ProcessHandle.of(Long.parseLong(id)).filter(ProcessHandle::isAlive);
  }

  private static void watch(ProcessHandle parent, Kernel kernel) {
    Thread watcher =
        new Thread(
            () -> {
              try {
                while (parent.isAlive()) {
                  Thread.sleep(PARENT_CHECK_MILLISECONDS);
                }
              } catch (InterruptedException ending) {
                Thread.currentThread().interrupt();
              }
              kernel.requestShutdown();
            },
            "watches the parent process");
    watcher.setDaemon(true);
    watcher.start();
  }
}
