package org.taketally.notebook.kernel.engine;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
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
    StringBuilder opened = new StringBuilder(source);
    int inserted = 0;
    for (Tree type : text.valid() ? text.unit().getTypeDecls() : Set.<Tree>of()) {
      if (type instanceof ClassTree record && record.getKind() == Tree.Kind.RECORD) {
        for (Tree member : record.getMembers()) {
          if (member instanceof MethodTree method && isClosedConstructor(method)) {
            long start = text.docs().getSourcePositions().getStartPosition(text.unit(), method);
            opened.insert((int) start + inserted, "public ");
            inserted += "public ".length();
          }
        }
      }
    }
    return opened.toString();
  }

  private static boolean isClosedConstructor(MethodTree method) {
    return method.getName().contentEquals("<init>")
        && method.getModifiers().getFlags().stream().noneMatch(ACCESS::contains);
  }
}
