package org.taketally.notebook.kernel.engine;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.UnresolvedReferenceException;

/** One run of one cell: piece after piece, until one fails. */
final class Evaluation {

  /** {@code name?} asks what is known about a name. */
  private static final Pattern QUESTION = Pattern.compile("\\s*([\\p{L}_$][\\w$.]*)\\s*\\?\\s*");

  private final Session session;
  private final Inspector inspector;
  private final Commands commands;
  private final Output output;
  private final ErrorTexts errors;

  /** Declarations that name something not declared yet, in the order met. */
  private final Map<String, DeclarationSnippet> open = new LinkedHashMap<>();

  private final Clock clock;
  private Snippet last;
  private boolean openEnded;

  Evaluation(Session session, Inspector inspector, Output output, Clock clock) {
    this.session = session;
    this.inspector = inspector;
    this.output = output;
    this.clock = clock;
    commands = new Commands(session, output, clock);
    errors = new ErrorTexts(session.origins);
  }

  /** Runs the cell up to its first error; {@link #value} then tells the last value. */
  Optional<CellError> run(int cell, String code) {
    Matcher question = QUESTION.matcher(code);
    if (question.matches()) {
      return explain(question.group(1));
    }
    List<Piece> pieces = Piece.of(code, session.analysis);
    if (!pieces.isEmpty()) {
      Piece end = pieces.get(pieces.size() - 1);
      if (end.kind() == Piece.Kind.UNFINISHED) {
        return Optional.of(errors.unfinished(cell, end));
      }
      openEnded = end.isOpenEnded(session.analysis);
    }
    for (Piece piece : pieces) {
      if (clock.isInterrupted()) {
        return Optional.of(errors.interrupted(clock.reason()));
      }
      Piece runnable = piece.runnable();
      session.origins.begin(cell, runnable);
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
    } catch (Commands.Refused refused) {
      return Optional.of(errors.refused(refused.getMessage()));
    }
  }

  private Optional<CellError> evaluate(String source) {
    session.control.forgetOutcome();
    last = null;
    for (SnippetEvent event : session.shell.eval(source)) {
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
      session.control.forgetLastClass();
    }
    return Optional.empty();
  }

  private Optional<CellError> failure(SnippetEvent event) {
    if (event.exception() instanceof UnresolvedReferenceException unresolved) {
      return Optional.of(errors.unresolved(session.shell, unresolved));
    }
    if (event.exception() != null) {
      Throwable thrown = session.control.failure();
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
      session.shell.drop(event.snippet());
    }
    return event.status() == Status.REJECTED || unusable
        ? Optional.of(errors.rejected(session.shell, event.snippet()))
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
            snippet -> output.print("stderr", ErrorTexts.openNames(session.shell, snippet) + "\n"));
  }

  /** Whether the cell ended with an expression, without a semicolon, that has a value. */
  boolean hasValue() {
    return openEnded
        && last != null
        && (last.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND
            || last.subKind() == SubKind.VAR_VALUE_SUBKIND
            || last.subKind() == SubKind.OTHER_EXPRESSION_SUBKIND);
  }

  Object value() {
    return session.control.value();
  }

  /** What went wrong when the value was turned into something to show. */
  CellError failureToShow(Throwable thrown) {
    return errors.thrown(thrown, null);
  }
}
