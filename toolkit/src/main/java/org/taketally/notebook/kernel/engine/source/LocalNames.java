package org.taketally.notebook.kernel.engine.source;

import com.sun.source.tree.BindingPatternTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreePathScanner;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Names that unfinished code declares and can still use where it ends: variables above it, loop
 * variables, parameters. JShell completes only names of cells that have run.
 */
public final class LocalNames {

  /** What the parser calls a name that is missing. */
  private static final String MISSING = "<error>";

  private static final String MEMBERS = "class C { ";
  private static final String STATEMENTS = "class C { void m() { ";

  private LocalNames() {}

  /**
   * Names known at the end of a text.
   *
   * @param above finished statements before it
   * @param own the statement or declaration that ends where names are asked for
   * @return names, outermost first
   */
  public static Set<String> at(String above, String own) {
    Set<String> names = known(STATEMENTS, above);
    Set<String> inside = known(MEMBERS, own);
    names.addAll(inside.contains(MISSING) ? known(STATEMENTS, own) : inside);
    names.remove(MISSING);
    return names;
  }

  private static Set<String> known(String before, String code) {
    Set<String> names = new LinkedHashSet<>();
    if (code.isBlank()) {
      return names;
    }
    JavaText text = JavaText.parse(before + code + "\n} }");
    SourcePositions positions = text.docs().getSourcePositions();
    int end = before.length() + code.length();
    new TreePathScanner<Void, Void>() {
      @Override
      public Void visitVariable(VariableTree variable, Void nothing) {
        Tree scope = getCurrentPath().getParentPath().getLeaf();
        boolean open =
            scope instanceof BindingPatternTree
                || positions.getEndPosition(text.unit(), scope) >= end;
        if (open) {
          names.add(variable.getName().toString());
        }
        return super.visitVariable(variable, null);
      }
    }.scan(text.unit(), null);
    return names;
  }
}
