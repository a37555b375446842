package org.taketally.notebook.kernel.engine;

/** A command that can't be carried out; the message is for the user. */
final class CommandRefused extends Exception {

  private static final long serialVersionUID = 1L;

  CommandRefused(String message) {
    super(message);
  }
}
