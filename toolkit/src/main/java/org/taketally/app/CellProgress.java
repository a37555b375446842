package org.taketally.app;

import java.io.Console;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.function.BiConsumer;
import org.taketally.files.Terminal;

/** Tells how far a notebook is: in place on a terminal, one line at the end elsewhere. */
final class CellProgress implements BiConsumer<Integer, Integer> {

  private final PrintWriter out;
  private final Path notebook;
  private final boolean terminal = isTerminal();

  CellProgress(PrintWriter out, Path notebook) {
    this.out = out;
    this.notebook = notebook;
  }

  /** From Java 22 on there is a console even where output is redirected, and it can tell. */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isTerminal() {
    Console console = System.console();
    if (console == null || Runtime.version().feature() < 22) {
      return console != null;
    }
    try {
      return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException unknown) {
      return false;
    }
  }

  @Override
  public void accept(Integer done, Integer all) {
    if (terminal) {
      if (out instanceof Terminal lines) {
        lines.restartLine();
      }
      out.print("%s: cell %d of %d".formatted(notebook, Math.min(done + 1, all), all));
      if (done.equals(all)) {
        out.println();
      }
    } else if (done.equals(all)) {
      out.println("%s: ran %d %s".formatted(notebook, all, all == 1 ? "cell" : "cells"));
    }
    out.flush();
  }
}
