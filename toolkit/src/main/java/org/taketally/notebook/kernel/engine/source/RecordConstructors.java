package org.taketally.notebook.kernel.engine.source;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.SourcePositions;
import java.util.Comparator;
import java.util.Set;
import java.util.regex.Pattern;
import javax.lang.model.element.Modifier;

/**
 * Lets records of a cell have constructors without a modifier, as in a file. JShell makes every
 * class of a cell public, and a public record must not have a constructor that isn't.
 */
final class RecordConstructors {

  private static final Pattern RECORD = Pattern.compile("\\brecord\\s+\\w");
  private static final Set<Modifier> ACCESS =
      Set.of(Modifier.PUBLIC, Modifier.PROTECTED, Modifier.PRIVATE);

  private RecordConstructors() {}

  /** The same source, a record's own constructors public; lines stay as they are. */
  static String opened(String source) {
    if (!RECORD.matcher(source).find()) {
      return source;
    }
    JavaText text = JavaText.parse(source);
    if (!text.valid()) {
      return source;
    }
    SourcePositions positions = text.docs().getSourcePositions();
    StringBuilder opened = new StringBuilder(source);
    text.unit().getTypeDecls().stream()
        .filter(type -> type.getKind() == Tree.Kind.RECORD)
        .flatMap(type -> ((ClassTree) type).getMembers().stream())
        .filter(RecordConstructors::isClosedConstructor)
        .map(constructor -> (int) positions.getStartPosition(text.unit(), constructor))
        .sorted(Comparator.reverseOrder())
        .forEach(start -> opened.insert(start, "public "));
    return opened.toString();
  }

  private static boolean isClosedConstructor(Tree member) {
    return member instanceof MethodTree method
        && method.getName().contentEquals("<init>")
        && method.getModifiers().getFlags().stream().noneMatch(ACCESS::contains);
  }
}
