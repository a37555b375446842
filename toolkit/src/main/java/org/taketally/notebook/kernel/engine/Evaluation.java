package org.taketally.notebook.kernel.engine;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.UnresolvedReferenceException;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.ErrorTexts;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.engine.source.Piece;
import org.taketally.notebook.kernel.engine.threads.Clock;

/** One run of one cell: piece after piece, until one fails. */
final class Evaluation {

  /** {@code name?} or {@code ?name} asks what is known about a name. */
  private static final Pattern QUESTION =
      Pattern.compile(
          "\\s*(?:\\?{1,2}\\s*([\\p{L}_$][\\w$.]*)|([\\p{L}_$][\\w$.]*)\\s*\\?{1,2})\\s*");

  /** A cell that begins with {@code %%} and a word; the rest is its body. */
  private static final Pattern WHOLE =
      Pattern.compile("\\s*%%(\\w*)([^\\n]*)(?:\\n(.*))?", Pattern.DOTALL);

  private final Workspace workspace;
  private final Inspector inspector;
  private final Commands commands;
  private final Output output;
  private final ErrorTexts errors;

  /** Declarations that name something not declared yet, in the order met. */
  private final Map<String, DeclarationSnippet> open = new LinkedHashMap<>();

  private final Clock clock;
  private Snippet last;
  private boolean openEnded;

  Evaluation(Workspace workspace, Inspector inspector, Output output, Clock clock) {
    this.workspace = workspace;
    this.inspector = inspector;
    this.output = output;
    this.clock = clock;
    commands = new Commands(workspace, output, clock);
    errors = workspace.errors;
  }

  /** Runs the cell up to its first error; {@link #value} then tells the last value. */
  Optional<CellError> run(int cell, String code) {
    Matcher question = QUESTION.matcher(code);
    if (question.matches()) {
      return explain(question.group(question.group(1) != null ? 1 : 2));
    }
    Matcher whole = WHOLE.matcher(code);
    if (!whole.matches()) {
      return runJava(cell, code);
    }
    if (whole.group(1).equals("time")) {
      clock.tellTime();
      return runJava(cell, code.replaceFirst("%%time", " ".repeat("%%time".length())));
    }
    workspace.origins.begin(cell, Piece.command(code));
    return runWhole(whole.group(1), Objects.requireNonNullElse(whole.group(3), ""));
  }

  /** A cell that as a whole is something else than Java. */
  private Optional<CellError> runWhole(String name, String body) {
    try {
      switch (name) {
        case "html" -> output.display(CellFunctions.html(body));
        case "markdown" -> output.display(CellFunctions.markdown(body));
        case "svg" -> output.display(CellFunctions.svg(body.strip()));
        case "bash", "sh" -> commands.shell(body);
        default ->
            throw new CommandRefused(
                "no cell begins with %%" + name + "; %help lists those that do");
      }
      return Optional.empty();
    } catch (CommandRefused refused) {
      return Optional.of(errors.refused(refused.getMessage()));
    }
  }

  private Optional<CellError> runJava(int cell, String code) {
    List<Piece> pieces = Piece.of(code, workspace.analysis);
    if (!pieces.isEmpty()) {
      Piece end = pieces.get(pieces.size() - 1);
      if (end.kind() == Piece.Kind.UNFINISHED) {
        return Optional.of(errors.unfinished(cell, end));
      }
      openEnded = end.isOpenEnded(workspace.analysis);
    }
    for (Piece piece : pieces) {
      if (clock.isInterrupted()) {
        return Optional.of(errors.interrupted(clock.reason()));
      }
      Piece runnable = piece.runnable();
      workspace.origins.begin(cell, runnable);
      Optional<CellError> error =
          piece.kind() == Piece.Kind.COMMAND
              ? command(runnable.source())
              : evaluate(runnable.evaluated());
      if (error.isPresent()) {
        return error;
      }
    }
    noteOpenNames();
    return clock.isInterrupted()
        ? Optional.of(errors.interrupted(clock.reason()))
        : Optional.empty();
  }

  private Optional<CellError> explain(String name) {
    Optional<Bundle> found = inspector.at(name.length(), name, true);
    output.page(found.orElseGet(() -> Bundle.text("nothing is known about " + name)));
    return Optional.empty();
  }

  private Optional<CellError> command(String line) {
    try {
      commands.run(line);
      return Optional.empty();
    } catch (CommandRefused refused) {
      return Optional.of(errors.refused(refused.getMessage()));
    }
  }

  private Optional<CellError> evaluate(String source) {
    workspace.control.forgetOutcome();
    last = null;
    for (SnippetEvent event : workspace.shell.eval(source)) {
      Optional<CellError> error = failure(event);
      if (error.isPresent()) {
        return error;
      }
      noteChange(event);
      if (event.causeSnippet() == null) {
        last = event.snippet();
      }
    }
    if (last != null
        && (last.kind() == Snippet.Kind.STATEMENT || last.kind() == Snippet.Kind.EXPRESSION)) {
      workspace.control.forgetLastClass();
    }
    return Optional.empty();
  }

  private Optional<CellError> failure(SnippetEvent event) {
    if (event.exception() instanceof UnresolvedReferenceException unresolved) {
      return Optional.of(errors.unresolved(workspace.shell, unresolved));
    }
    if (event.exception() != null) {
      Throwable thrown = workspace.control.failure();
      return Optional.of(
          errors.thrown(
              thrown == null ? event.exception() : thrown,
              ErrorTexts.translated(event.exception())));
    }
    if (event.causeSnippet() != null) {
      return Optional.empty();
    }
    boolean unusable =
        event.status() == Status.RECOVERABLE_NOT_DEFINED
            && event.snippet().kind() == Snippet.Kind.VAR;
    if (unusable) {
      CellError error = errors.undeclared(workspace.shell, (DeclarationSnippet) event.snippet());
      workspace.shell.drop(event.snippet());
      return Optional.of(error);
    }
    return event.status() == Status.REJECTED
        ? Optional.of(errors.rejected(workspace.shell, event.snippet()))
        : Optional.empty();
  }

  private void noteChange(SnippetEvent event) {
    boolean isOpen =
        event.status() == Status.RECOVERABLE_DEFINED
            || event.status() == Status.RECOVERABLE_NOT_DEFINED;
    if (event.snippet() instanceof DeclarationSnippet declared) {
      if (isOpen) {
        open.put(declared.id(), declared);
      } else {
        open.remove(declared.id());
      }
    }
    if (event.causeSnippet() instanceof DeclarationSnippet cause
        && event.snippet() instanceof jdk.jshell.VarSnippet variable
        && event.status() == Status.VALID) {
      output.print(
          "stderr",
          "variable %s was emptied because %s changed; run its cell again%n"
              .formatted(variable.name(), cause.name()));
    }
  }

  private void noteOpenNames() {
    open.values()
        .forEach(
            snippet ->
                output.print("stderr", ErrorTexts.openNames(workspace.shell, snippet) + "\n"));
  }

  /** Whether the cell ended with an expression, without a semicolon, that has a value. */
  boolean hasValue() {
    return openEnded
        && last != null
        && !isByTheWay()
        && (last.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND
            || last.subKind() == SubKind.VAR_VALUE_SUBKIND
            || last.subKind() == SubKind.OTHER_EXPRESSION_SUBKIND);
  }

  /** What {@code display} and {@code printf} return is seldom what one wants to see. */
  private boolean isByTheWay() {
    Object value = value();
    return last.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND
        && (CellFunctions.isNameOfDisplay(value) || isStream(value));
  }

  @SuppressWarnings("ReferenceEquality") // those very streams
  private static boolean isStream(Object value) {
    return value != null && (value == System.out || value == System.err);
  }

  Object value() {
    return workspace.control.value();
  }

  /** What went wrong when the value was turned into something to show. */
  CellError failureToShow(Throwable thrown) {
    return errors.thrown(thrown, null);
  }
}
