package org.taketally.notebook.kernel.engine.output;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.Diag;
import jdk.jshell.SourceCodeAnalysis;

/** Finds the import that is missing where the compiler doesn't know a name. */
public final class Imports {

  private static final Pattern SYMBOL =
      Pattern.compile("symbol: +(?:class|variable|interface) +(\\p{Lu}\\w*)");
  private static final int SHOWN = 3;

  private final SourceCodeAnalysis analysis;

  /**
   * Imports of one session.
   *
   * @param analysis knows the classes there are
   */
  public Imports(SourceCodeAnalysis analysis) {
    this.analysis = analysis;
  }

  /** The imports that would help, most likely first; none if the error is another. */
  List<String> missing(Diag error) {
    Matcher symbol = SYMBOL.matcher(error.getMessage(Locale.ENGLISH));
    return symbol.find() ? of(symbol.group(1)) : List.of();
  }

  /** The imports that would help for a name such as {@code class AtomicInteger}. */
  List<String> of(String kindAndName) {
    String name = kindAndName.replaceFirst("^.* ", "");
    return analysis.listQualifiedNames(name, name.length()).getNames().stream()
        .filter(full -> full.endsWith("." + name))
        .filter(full -> !full.startsWith("com.sun.") && !full.startsWith("sun."))
        .sorted(Comparator.comparing((String full) -> !full.startsWith("java.")))
        .limit(SHOWN)
        .map(full -> "import " + full + ";")
        .toList();
  }
}
