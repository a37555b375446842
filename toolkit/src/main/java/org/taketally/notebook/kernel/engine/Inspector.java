package org.taketally.notebook.kernel.engine;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import jdk.jshell.ImportSnippet;
import jdk.jshell.SourceCodeAnalysis.Documentation;
import jdk.jshell.VarSnippet;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.Rendering;
import org.taketally.notebook.kernel.engine.source.Identifiers;
import org.taketally.notebook.kernel.engine.source.JavadocText;
import org.taketally.notebook.kernel.engine.source.Piece;
import org.taketally.notebook.kernel.engine.source.SourceDocs;

/**
 * Tells what is known about a name: a variable's type and value, a class's or member's
 * documentation.
 */
final class Inspector {

  private static final int SHORT = 500;
  private static final int LONG = 5_000;
  private static final int OVERLOADS = 6;

  private final Workspace workspace;
  private final Rendering rendering;

  Inspector(Workspace workspace, Rendering rendering) {
    this.workspace = workspace;
    this.rendering = rendering;
  }

  Optional<Bundle> at(int cursor, String code, boolean more) {
    int start = Identifiers.startOf(code, cursor);
    int end = Identifiers.endOf(code, cursor);
    boolean member = start > 0 && code.charAt(start - 1) == '.';
    Optional<VarSnippet> variable =
        member ? Optional.empty() : variable(code.substring(start, end));
    if (variable.isPresent()) {
      return Optional.of(Bundle.text(describe(variable.get(), more ? LONG : SHORT)));
    }
    Piece piece = Piece.lastOf(code.substring(0, end), workspace.analysis);
    if (piece == null || piece.kind() == Piece.Kind.COMMAND) {
      return Optional.empty();
    }
    String own = code.substring(piece.offset(), end);
    List<Documentation> found = documentation(own);
    if (found.isEmpty() && end > start) {
      found = documentation(own + "("); // a method's name, nothing after it
    }
    return found.isEmpty() ? Optional.empty() : Optional.of(Bundle.text(describe(found)));
  }

  private Optional<VarSnippet> variable(String name) {
    return workspace.shell.variables().filter(each -> each.name().equals(name)).findFirst();
  }

  private String describe(VarSnippet variable, int longest) {
    String value;
    try {
      workspace.shell.varValue(variable);
      Object object = workspace.control.value();
      value = ((Bundle) workspace.control.call(() -> rendering.of(object))).plainText();
    } catch (Throwable thrown) {
      value = "(can't be shown: " + thrown + ")";
    }
    String shown = value.length() > longest ? value.substring(0, longest) + "..." : value;
    return "%s %s%n%s".formatted(variable.typeName(), variable.name(), shown);
  }

  private List<Documentation> documentation(String code) {
    return workspace.analysis.documentation(code, code.length(), true);
  }

  private String describe(List<Documentation> found) {
    SourceDocs sources = new SourceDocs(workspace.control.loader(), importedPackages());
    String text =
        found.stream()
            .limit(OVERLOADS)
            .map(each -> each.signature() + comment(each, sources))
            .collect(Collectors.joining("\n\n"));
    int left = found.size() - OVERLOADS;
    return left > 0 ? text + "\n\n(%d more of this name)".formatted(left) : text;
  }

  private static String comment(Documentation documentation, SourceDocs sources) {
    String javadoc = documentation.javadoc();
    Optional<String> text =
        javadoc != null
            ? Optional.of(JavadocText.plain(javadoc))
            : sources.comment(documentation.signature());
    return text.map(plain -> "\n\n" + plain).orElse("");
  }

  private List<String> importedPackages() {
    return workspace
        .shell
        .imports()
        .filter(each -> !each.isStatic())
        .map(ImportSnippet::fullname)
        .map(name -> name.substring(0, Math.max(0, name.lastIndexOf('.'))))
        .distinct()
        .toList();
  }
}
