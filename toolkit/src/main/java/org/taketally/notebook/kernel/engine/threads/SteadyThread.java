package org.taketally.notebook.kernel.engine.threads;

/**
 * A thread of the kernel's own. Code of cells can reach every thread of the process and interrupt
 * it; this one takes no notice, since an interrupt would close the channel it reads from.
 */
public final class SteadyThread extends Thread {

  /**
   * A thread that doesn't keep the process alive.
   *
   * @param task what it does
   * @param name shown in thread dumps
   */
  public SteadyThread(Runnable task, String name) {
    super(task, name);
    setDaemon(true);
  }

  /** Does nothing: whoever may end this thread tells its task. */
  @Override
  public void interrupt() {
    // see the class's comment
  }
}
