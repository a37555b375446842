package org.taketally.notebook.runner;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.taketally.notebook.kernel.engine.source.Declarations;
import org.taketally.notebook.kernel.engine.source.Declarations.Declared;

/** Gives the variables declared in the parameters cell other values. */
final class Parameters {

  private Parameters() {}

  static void set(Notebook notebook, Map<String, String> values) {
    if (values.isEmpty()) {
      return;
    }
    NotebookCell cell =
        notebook
            .parametersCell()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "the notebook has no cell tagged \"parameters\", so nothing can be set"));
    cell.setSource(changed(cell.source(), values));
  }

  static String changed(String source, Map<String, String> values) {
    List<Declared> declared = Declarations.in(source);
    for (String name : values.keySet()) {
      if (declared.stream().noneMatch(each -> each.name().equals(name))) {
        String known = declared.stream().map(Declared::name).collect(Collectors.joining(", "));
        throw new IllegalArgumentException(
            "no parameter \"%s\"; this notebook has: %s".formatted(name, known));
      }
    }
    StringBuilder changed = new StringBuilder(source);
    for (int i = declared.size() - 1; i >= 0; i--) {
      Declared each = declared.get(i);
      if (values.containsKey(each.name())) {
        changed.replace(each.start(), each.end(), literal(each, values.get(each.name())));
      }
    }
    return changed.toString();
  }

  private static String literal(Declared declared, String value) {
    if (!declared.isText()) {
      return value;
    }
    String escaped = value.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n");
    return '"' + escaped + '"';
  }
}
