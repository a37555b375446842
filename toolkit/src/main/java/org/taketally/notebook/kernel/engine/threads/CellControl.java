package org.taketally.notebook.kernel.engine.threads;

import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.concurrent.Callable;
import jdk.jshell.execution.LocalExecutionControl;
import jdk.jshell.spi.SPIResolutionException;

/**
 * Executes compiled snippets in this process. Keeps the value or the throwable itself, which JShell
 * would turn into text, and really stops code that is interrupted.
 */
public final class CellControl extends LocalExecutionControl {

  /** From here on there is no {@code Thread.stop}; JShell weaves checks into snippets instead. */
  private static final boolean WOVEN_STOP_CHECKS = Runtime.version().feature() >= 20;

  private static final int CAUSES = 8;

  private final SnippetClasses classes;
  private final UserThreads threads;
  private Object value;
  private Throwable failure;
  private String lastClass = "";
  private volatile boolean stopChecksReady = !WOVEN_STOP_CHECKS;

  public CellControl(SnippetClasses classes, UserThreads threads) {
    super(classes);
    this.classes = classes;
    this.threads = threads;
  }

  /** For {@link #readyStopChecks}. */
  public static void nothing() {}

  /** What the last snippet returned. */
  public Object value() {
    return value;
  }

  /** What the last snippet threw, or null. */
  public Throwable failure() {
    return failure;
  }

  public void forgetOutcome() {
    value = null;
    failure = null;
  }

  /** Runs code of ours that calls code of the user's, such as {@code toString}. */
  public Object call(Callable<?> code) throws Throwable {
    readyStopChecks();
    clientCodeEnter();
    try {
      return threads.run(code, classes.latest());
    } finally {
      clientCodeLeave();
    }
  }

  @Override
  protected String invoke(Method method) throws Exception {
    readyStopChecks();
    try {
      value = threads.run(() -> method.invoke(null), classes.latest());
    } catch (InvocationTargetException thrown) {
      throw thrown;
    } catch (Throwable thrown) {
      throw new InvocationTargetException(thrown);
    } finally {
      lastClass = method.getDeclaringClass().getName();
    }
    return "";
  }

  /** Lets go of the class of a statement that has run. */
  public void forgetLastClass() {
    classes.forget(lastClass);
  }

  /** Keeps the variable's value itself, see {@link #value}; gives no text. */
  @Override
  public String varValue(String className, String name) throws InternalException {
    try {
      Field field = classes.findClass(className).getDeclaredField(name);
      field.setAccessible(true);
      value = field.get(null);
      return "";
    } catch (ReflectiveOperationException missing) {
      throw new InternalException(missing.toString());
    }
  }

  /** Sees all classes of cells and all added jars. */
  public ClassLoader loader() {
    return classes.latest();
  }

  @Override
  protected String throwConvertedInvocationException(Throwable thrown) throws RunException {
    failure = thrown;
    throw asRunException(thrown, CAUSES);
  }

  private static RunException asRunException(Throwable thrown, int causesLeft) {
    if (thrown instanceof SPIResolutionException unresolved) {
      return new ResolutionException(unresolved.id(), unresolved.getStackTrace());
    }
    UserException exception =
        new UserException(thrown.getMessage(), thrown.getClass().getName(), thrown.getStackTrace());
    if (thrown.getCause() != null && causesLeft > 0) {
      exception.initCause(asRunException(thrown.getCause(), causesLeft - 1));
    }
    return exception;
  }

  public void interrupt(String reason) {
    threads.interrupt(reason, this::stopByForce);
  }

  @SuppressWarnings({"deprecation", "removal", "ThreadStop"})
  private void stopByForce(Thread thread) {
    if (!WOVEN_STOP_CHECKS) {
      thread.stop();
      return;
    }
    try {
      stopChecksReady = false;
      stop();
      thread.interrupt();
    } catch (ExecutionControlException notRunning) {
      // ended meanwhile
    }
  }

  /** Makes JShell load, or reset, the flag that woven checks look at. */
  private void readyStopChecks() throws Exception {
    if (!stopChecksReady) {
      super.invoke(CellControl.class.getMethod("nothing"));
      stopChecksReady = true;
    }
  }
}
