package org.taketally.app;

/** What the process tells the shell. Documented in docs/commands.md. */
final class ExitStatus {

  /** Done, nothing to repair. */
  static final int FINE = 0;

  /** The records have problems that need a person: rows set aside, or a file that can't be read. */
  static final int NEEDS_A_PERSON = 1;

  /** The command was typed wrongly, or a file named on it isn't there. */
  static final int USAGE = 2;

  /** The records are readable, but they can't answer; the reason is said. */
  static final int CANNOT_BE_COMPUTED = 3;

  private ExitStatus() {}
}
