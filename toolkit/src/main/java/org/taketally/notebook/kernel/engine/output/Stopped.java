package org.taketally.notebook.kernel.engine.output;

/** Says that code of a cell was stopped, and where. */
public final class Stopped extends Exception {

  private static final long serialVersionUID = 1L;

  public Stopped(String reason, StackTraceElement[] place) {
    super(reason);
    setStackTrace(place);
  }
}
