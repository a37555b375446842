package org.taketally.notebook.kernel.engine;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.SnippetWrapper;

/**
 * Finds the snippet and line that a frame of a compiled cell came from. JShell does this for what
 * ends a cell, but not for what ends a thread that a cell has started.
 */
final class Places {

  /** The class JShell makes of a snippet, and the class declared in it, if any. */
  private static final Pattern CLASS =
      Pattern.compile("(REPL\\.\\$JShell\\$\\d+(?:_\\d+)*[A-Z]*)(?:\\$(.*))?");

  private final JShell shell;
  private final SourceCodeAnalysis analysis;

  Places(JShell shell, SourceCodeAnalysis analysis) {
    this.shell = shell;
    this.analysis = analysis;
  }

  /** Frames as JShell would give them; called by any thread, so what can't be found stays. */
  StackTraceElement[] located(StackTraceElement[] frames) {
    StackTraceElement[] located = frames.clone();
    for (int i = 0; i < located.length; i++) {
      Matcher name = CLASS.matcher(located[i].getClassName());
      if (name.matches()) {
        located[i] = located(located[i], name);
      }
    }
    return located;
  }

  private StackTraceElement located(StackTraceElement frame, Matcher name) {
    try {
      Optional<Snippet> snippet =
          shell
              .snippets()
              .filter(each -> name.group(1).equals(analysis.wrapper(each).fullClassName()))
              .findFirst();
      if (snippet.isEmpty()) {
        return frame;
      }
      String owner = name.group(2) == null ? "" : name.group(2).replace('$', '.');
      int line = line(analysis.wrapper(snippet.get()), frame.getLineNumber());
      return new StackTraceElement(owner, frame.getMethodName(), "#" + snippet.get().id(), line);
    } catch (RuntimeException busy) {
      return frame;
    }
  }

  /** The line of the snippet that a line of the class made of it stands for, from 1. */
  private static int line(SnippetWrapper wrapper, int wrappedLine) {
    String wrapped = wrapper.wrapped();
    int position = 0;
    for (int line = 1; line < wrappedLine; line++) {
      position = wrapped.indexOf('\n', position) + 1;
    }
    while (position < wrapped.length() && Character.isWhitespace(wrapped.charAt(position))) {
      position++;
    }
    int source = Math.max(0, wrapper.wrappedToSourcePosition(position));
    String before = wrapper.source().substring(0, Math.min(source, wrapper.source().length()));
    return 1 + (int) before.chars().filter(c -> c == '\n').count();
  }
}
