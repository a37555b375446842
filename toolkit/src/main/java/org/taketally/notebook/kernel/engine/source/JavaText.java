package org.taketally.notebook.kernel.engine.source;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileManager;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/**
 * Java text as the compiler's parser sees it; names aren't looked up.
 *
 * @param unit its syntax tree
 * @param docs finds comments of tree nodes
 * @param valid whether the parser had nothing to complain of
 */
record JavaText(CompilationUnitTree unit, DocTrees docs, boolean valid) {

  private static final JavaCompiler COMPILER = ToolProvider.getSystemJavaCompiler();

  /** Made once, since opening the JDK's own classes is what takes long. */
  private static final JavaFileManager FILES =
      COMPILER.getStandardFileManager(null, Locale.ENGLISH, StandardCharsets.UTF_8);

  static JavaText parse(String source) {
    DiagnosticCollector<JavaFileObject> problems = new DiagnosticCollector<>();
    JavacTask task =
        (JavacTask)
            COMPILER.getTask(
                null, FILES, problems, List.of("-proc:none"), null, List.of(new Source(source)));
    try {
      CompilationUnitTree unit = task.parse().iterator().next();
      return new JavaText(unit, DocTrees.instance(task), problems.getDiagnostics().isEmpty());
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** Source text in memory. */
  private static final class Source extends SimpleJavaFileObject {

    private final String text;

    Source(String text) {
      super(URI.create("string:///C.java"), Kind.SOURCE);
      this.text = text;
    }

    @Override
    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
      return text;
    }
  }
}
