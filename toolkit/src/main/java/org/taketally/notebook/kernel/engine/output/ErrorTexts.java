package org.taketally.notebook.kernel.engine.output;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.Diag;
import jdk.jshell.EvalException;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.UnresolvedReferenceException;
import org.taketally.notebook.kernel.engine.source.Origins;
import org.taketally.notebook.kernel.engine.source.Origins.Origin;
import org.taketally.notebook.kernel.engine.source.Piece;
import org.taketally.notebook.kernel.engine.source.SnippetNames;

/**
 * Words an error so that a person finds the line and the reason; frames of the kernel are left out.
 */
public final class ErrorTexts {

  private static final int FIRST_FRAMES = 15;
  private static final int LAST_FRAMES = 3;
  private static final int CAUSES = 8;

  /** Frames of a library shown between two of the cell's own. */
  private static final int FOREIGN_FRAMES = 4;

  /** Names JShell gives to the code of a cell that stands in no method. */
  private static final String TOP_LEVEL = "do_it$";

  /** The compiler's name of a lambda: the method it stands in, and a number. */
  private static final Pattern LAMBDA = Pattern.compile("lambda\\$(.*)\\$\\d+");

  /** Where the kernel's own code is. */
  private static final String KERNEL = "org.taketally.notebook.kernel.";

  private static final String BOLD_RED = "\u001b[1;31m";
  private static final String BOLD = "\u001b[1m";
  private static final String PLAIN = "\u001b[0m";

  private final Origins origins;
  private final Imports imports;
  private final Function<Throwable, String> advice;
  private final UnaryOperator<StackTraceElement[]> located;

  /**
   * Texts of one session.
   *
   * @param origins where code was written
   * @param imports finds those that are missing
   * @param advice what to do about an error, or empty text
   * @param located frames of compiled cells, with the cells' own names and lines
   */
  public ErrorTexts(
      Origins origins,
      Imports imports,
      Function<Throwable, String> advice,
      UnaryOperator<StackTraceElement[]> located) {
    this.origins = origins;
    this.imports = imports;
    this.advice = advice;
    this.located = located;
  }

  /** A cell that ends in the middle of something. */
  public CellError unfinished(int cell, Piece piece) {
    Origin origin = new Origin(cell, piece.line(), piece.source());
    return placed(
        "CompileError",
        "this is not finished: a bracket, quote or ; may be missing",
        origin,
        1,
        "");
  }

  /** A command that can't be carried out. */
  public CellError refused(String message) {
    return placed("CommandError", message, origins.current(), 1, "");
  }

  /** What the compiler says. */
  public CellError rejected(JShell shell, Snippet snippet) {
    Origin origin = origins.current();
    List<Diag> errors = shell.diagnostics(snippet).filter(Diag::isError).toList();
    if (errors.isEmpty()) {
      return placed("CompileError", "not understood", origin, 1, "");
    }
    Diag first = errors.get(0);
    String before =
        origin.source().substring(0, Math.min(position(first), origin.source().length()));
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    int column = before.length() - (before.lastIndexOf('\n') + 1);
    int width = (int) Math.max(1, first.getEndPosition() - first.getStartPosition());
    int room = Math.max(1, origin.text(line).length() - column);
    String marker = " ".repeat(column) + "^".repeat(Math.min(width, room));
    String message =
        errors.stream().map(ErrorTexts::tidy).distinct().collect(Collectors.joining("; "));
    return placed("CompileError", message, origin, line, marker).saying(hints(errors));
  }

  /** A variable of a class, or with a value, that isn't known. */
  public CellError undeclared(JShell shell, DeclarationSnippet snippet) {
    List<String> missing = shell.unresolvedDependencies(snippet).toList();
    if (missing.isEmpty()) {
      return rejected(shell, snippet);
    }
    String message = "cannot find symbol: " + String.join(", ", missing);
    List<String> found = missing.stream().flatMap(name -> imports.of(name).stream()).toList();
    return placed("CompileError", message, origins.current(), 1, "").saying(needed(found));
  }

  private static List<String> needed(List<String> imports) {
    return imports.isEmpty()
        ? List.of()
        : List.of("  it may need: " + String.join("  or  ", imports));
  }

  private List<String> hints(List<Diag> errors) {
    List<String> hints = new ArrayList<>();
    List<String> missing =
        errors.stream().flatMap(error -> imports.missing(error).stream()).distinct().toList();
    hints.addAll(needed(missing));
    if (errors.stream().anyMatch(error -> error.getCode().contains("preview.feature"))) {
      hints.add(
          "  this Java is version %d; for a later one, install its JDK and run \"notebook install\" with it"
              .formatted(Runtime.version().feature()));
    }
    return hints;
  }

  private static int position(Diag diag) {
    return (int) Math.max(0, diag.getStartPosition());
  }

  /** One line, without the places that JShell invents. */
  private static String tidy(Diag diag) {
    return diag.getMessage(Locale.ENGLISH)
        .lines()
        .map(String::strip)
        .filter(line -> !line.startsWith("location:"))
        .map(line -> line.replaceFirst("^symbol: +", "").replaceAll(": +", ": "))
        .collect(Collectors.joining(": "))
        .replace(SnippetNames.PREFIX, "");
  }

  private static CellError placed(
      String name, String message, Origin origin, int line, String marker) {
    List<String> lines = new ArrayList<>();
    lines.add(heading(name, message));
    lines.add("  " + origin.place(line));
    lines.add("    " + origin.text(line));
    if (!marker.isEmpty()) {
      lines.add("    " + BOLD_RED + marker + PLAIN);
    }
    return new CellError(name, origin.place(line) + ": " + message, lines);
  }

  /**
   * What running code threw.
   *
   * @param thrown the throwable itself
   * @param translated the same, with JShell's frames, or null if JShell didn't see it
   */
  public CellError thrown(Throwable thrown, Throwable translated) {
    List<String> lines = new ArrayList<>();
    Throwable frames = translated;
    String lead = "";
    Throwable cause = thrown;
    for (int depth = 0; cause != null && depth <= CAUSES; depth++) {
      lines.add(lead + heading(name(cause), message(cause)));
      addFrames(
          lines, frames == null ? located.apply(cause.getStackTrace()) : frames.getStackTrace());
      frames = frames == null ? null : frames.getCause();
      cause = cause.getCause();
      lead = "Caused by ";
    }
    return new CellError(name(thrown), message(thrown), lines).saying(advised(thrown));
  }

  /** Advice on an error, or on what caused it. */
  private List<String> advised(Throwable thrown) {
    Throwable cause = thrown;
    for (int depth = 0; cause != null && depth <= CAUSES; depth++) {
      String found = cause instanceof OutOfMemoryError ? needsMemory() : advice.apply(cause);
      if (!found.isEmpty()) {
        return List.of(found);
      }
      cause = cause.getCause();
    }
    return List.of();
  }

  /** A cell that was interrupted between two pieces, or took it without ending. */
  public CellError interrupted(String reason) {
    return thrown(new Stopped(reason, new StackTraceElement[0]), null);
  }

  private static String needsMemory() {
    return "Cells may use %,d MB of memory. Set large variables to null, or give more: notebook install --java-option=-Xmx8g"
        .formatted(Runtime.getRuntime().maxMemory() >> 20);
  }

  private static String name(Throwable thrown) {
    return thrown instanceof Stopped ? CellError.INTERRUPTED : ownName(thrown.getClass().getName());
  }

  /** A class of a cell as it was named there. */
  private static String ownName(String className) {
    return SnippetNames.asNamed(className).replace(SnippetNames.PREFIX, "");
  }

  private static String message(Throwable thrown) {
    return thrown.getMessage() == null ? "" : thrown.getMessage();
  }

  private static String heading(String name, String message) {
    return BOLD_RED + name + PLAIN + (message.isEmpty() ? "" : ": " + message);
  }

  private void addFrames(List<String> lines, StackTraceElement[] all) {
    StackTraceElement[] frames = withoutKernel(all);
    boolean sourceShown = false;
    int foreign = 0;
    for (int i = 0; i < frames.length; i++) {
      int hidden = frames.length - FIRST_FRAMES - LAST_FRAMES;
      if (i == FIRST_FRAMES && hidden > 0) {
        lines.add("  ... %,d more".formatted(hidden));
        i += hidden;
      }
      Origin origin = origins.ofFile(frames[i].getFileName());
      foreign = origin == null ? foreign + 1 : 0;
      if (foreign > FOREIGN_FRAMES || repeatsTopLevel(frames, i)) {
        continue; // how a library works inside seldom helps
      }
      lines.add("  at " + frameText(frames[i], origin));
      if (origin != null && !sourceShown) {
        lines.add("      " + BOLD + origin.text(frames[i].getLineNumber()).strip() + PLAIN);
        sourceShown = true;
      }
    }
  }

  /** JShell may take a statement apart; then two frames of one file stand for one place. */
  private static boolean repeatsTopLevel(StackTraceElement[] frames, int i) {
    return i > 0
        && isTopLevel(frames[i])
        && isTopLevel(frames[i - 1])
        && Objects.equals(frames[i].getFileName(), frames[i - 1].getFileName());
  }

  private static boolean isTopLevel(StackTraceElement frame) {
    return frame.getMethodName().isEmpty() || frame.getMethodName().startsWith(TOP_LEVEL);
  }

  private static String frameText(StackTraceElement frame, Origin origin) {
    if (origin == null) {
      return SnippetNames.isSnippetClass(frame.getClassName())
          ? ownName(frame.getClassName()) + "." + frame.getMethodName()
          : frame.toString();
    }
    String place = origin.place(frame.getLineNumber());
    String method = frame.getMethodName();
    if (isTopLevel(frame)) {
      return place;
    }
    String owner = frame.getClassName().isEmpty() ? "" : frame.getClassName() + ".";
    Matcher lambda = LAMBDA.matcher(method);
    if (!lambda.matches()) {
      return owner + method + " (" + place + ")";
    }
    boolean inMethod = !lambda.group(1).startsWith(TOP_LEVEL);
    return "lambda " + (inMethod ? "in " + owner + lambda.group(1) + " " : "") + "(" + place + ")";
  }

  /** Cuts what lies below the cell's own code, or else below the first frame of ours. */
  private StackTraceElement[] withoutKernel(StackTraceElement[] frames) {
    int end = frames.length;
    while (end > 0 && !isOfCells(frames[end - 1])) {
      end--;
    }
    for (int i = 0; end == 0 && i < frames.length; i++) {
      if (frames[i].getClassName().startsWith(KERNEL)) {
        return Arrays.copyOf(frames, i);
      }
    }
    return end > 0 ? Arrays.copyOf(frames, end) : frames;
  }

  private boolean isOfCells(StackTraceElement frame) {
    return origins.ofFile(frame.getFileName()) != null
        || SnippetNames.isSnippetClass(frame.getClassName());
  }

  /** Code that names something not declared (yet) was run. */
  public CellError unresolved(JShell shell, UnresolvedReferenceException exception) {
    DeclarationSnippet snippet = exception.getSnippet();
    String message = openNames(shell, snippet);
    List<String> lines = new ArrayList<>(List.of(heading("CompileError", message)));
    addFrames(lines, exception.getStackTrace());
    return new CellError("CompileError", message, lines);
  }

  /** E.g. {@code method h can't be used until method nosuch() is declared}. */
  public static String openNames(JShell shell, DeclarationSnippet snippet) {
    String kind =
        snippet.kind() == Snippet.Kind.TYPE_DECL
            ? "type"
            : snippet.kind().name().toLowerCase(Locale.ROOT);
    List<String> missing = shell.unresolvedDependencies(snippet).toList();
    String what = kind + " " + snippet.name() + " can't be used until ";
    if (missing.isEmpty()) {
      String problems =
          shell.diagnostics(snippet).map(ErrorTexts::tidy).collect(Collectors.joining("; "));
      return what + "this is put right: " + problems;
    }
    return what + String.join(", ", missing) + (missing.size() > 1 ? " are" : " is") + " declared";
  }

  /** The translated exception of an evaluation, or null. */
  public static Throwable translated(Throwable exception) {
    return exception instanceof EvalException ? exception : null;
  }
}
