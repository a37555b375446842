package org.taketally.app;

/** The records are readable but don't hold the answer asked for; the message says why. */
final class CannotCompute extends RuntimeException {

  private static final long serialVersionUID = 1L;

  CannotCompute(String reason) {
    super(reason);
  }
}
