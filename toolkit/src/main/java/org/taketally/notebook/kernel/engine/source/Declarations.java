package org.taketally.notebook.kernel.engine.source;

import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import java.util.ArrayList;
import java.util.List;

/** Finds the variables a cell declares, and where their values stand. */
public final class Declarations {

  private static final String BEFORE = "class C { void m() {";

  /**
   * A variable declared with a value.
   *
   * @param name its name
   * @param start where its value begins in the cell, in UTF-16 units
   * @param end where its value ends
   * @param isText whether it is a {@code String}
   */
  public record Declared(String name, int start, int end, boolean isText) {}

  private Declarations() {}

  /**
   * The variables a cell declares with a value, in order.
   *
   * @param cell Java text
   * @return variables at any depth; none if the text isn't Java
   */
  public static List<Declared> in(String cell) {
    JavaText text = JavaText.parse(BEFORE + cell + "\n} }");
    SourcePositions positions = text.docs().getSourcePositions();
    List<Declared> found = new ArrayList<>();
    text.unit()
        .accept(
            new TreeScanner<Void, Void>() {
              @Override
              public Void visitVariable(VariableTree variable, Void nothing) {
                Tree value = variable.getInitializer();
                if (value != null) {
                  found.add(
                      new Declared(
                          variable.getName().toString(),
                          (int) positions.getStartPosition(text.unit(), value) - BEFORE.length(),
                          (int) positions.getEndPosition(text.unit(), value) - BEFORE.length(),
                          isText(variable)));
                }
                return super.visitVariable(variable, null);
              }
            },
            null);
    return found;
  }

  private static boolean isText(VariableTree variable) {
    boolean textValue =
        variable.getInitializer() instanceof LiteralTree literal
            && literal.getValue() instanceof String;
    return textValue
        || (variable.getType() != null && variable.getType().toString().equals("String"));
  }
}
