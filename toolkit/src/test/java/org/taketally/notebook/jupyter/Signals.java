package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Starts programs so that the signal of an interrupt reaches them, or doesn't. A shell that isn't
 * interactive starts what it puts in the background with that signal ignored, and every program
 * started from there inherits it: a build, its tests, and the kernels they start.
 */
final class Signals {

  /** Before a command: starts it as a shell starts what it puts in the background. */
  static final List<String> UNINTERRUPTIBLE =
      List.of("/bin/sh", "-c", "trap '' INT; exec \"$@\"", "sh");

  private static final String IGNORED = "SigIgn:";
  private static final int HEXADECIMAL = 16;
  private static final long INTERRUPT = 1L << 1; // signal 2, counted from 1

  private Signals() {}

  /**
   * Before a command: starts it so that an interrupt reaches it, whatever these tests inherited.
   */
  static List<String> interruptible() throws Exception {
    long own = ProcessHandle.current().pid();
    if (!ignoresInterrupts(own).orElse(false)) {
      return List.of();
    }
    Path env = Path.of("/usr/bin/env");
    Jupyter.require("env", env);
    List<String> command = List.of(env.toString(), "--default-signal=INT");
    Process tried = new ProcessBuilder(command).start();
    tried.getInputStream().readAllBytes();
    assertThat(tried.waitFor())
        .as("these tests run with SIGINT ignored, and this env can't undo that: run them in front")
        .isZero();
    return command;
  }

  /** Whether a process ignores the signal of an interrupt; empty where the system doesn't say. */
  static Optional<Boolean> ignoresInterrupts(long process) throws IOException {
    Path status = Path.of("/proc", String.valueOf(process), "status");
    if (!Files.isReadable(status)) {
      return Optional.empty();
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith(IGNORED))
        .map(line -> Long.parseUnsignedLong(line.substring(IGNORED.length()).strip(), HEXADECIMAL))
        .map(ignored -> (ignored & INTERRUPT) != 0)
        .findFirst();
  }
}
