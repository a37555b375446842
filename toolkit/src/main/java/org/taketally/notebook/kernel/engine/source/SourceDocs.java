package org.taketally.notebook.kernel.engine.source;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds the comment of a class or member in source files shipped beside the classes, under {@code
 * META-INF/sources/}, so that documentation is there wherever the classes are.
 */
public final class SourceDocs {

  private static final String FOLDER = "META-INF/sources/";

  /** {@code type pkg.Outer.member(type name, ...)}, as JShell writes it; type and rest may lack. */
  private static final Pattern SIGNATURE =
      Pattern.compile("(?:.* )?([\\w.$]+(?:<[^(]*>)?(?:\\.[\\w$]+)*)(?::[^(]*)?(?:\\((.*)\\).*)?");

  private final ClassLoader loader;

  /** Packages to look for simple names in. */
  private final List<String> packages;

  public SourceDocs(ClassLoader loader, List<String> packages) {
    this.loader = loader;
    this.packages = packages;
  }

  /** The comment of what a signature names, as plain text. */
  public Optional<String> comment(String signature) {
    Matcher parts = SIGNATURE.matcher(signature.replaceAll("<[^<>]*>", ""));
    if (!parts.matches()) {
      return Optional.empty();
    }
    List<String> names = List.of(parts.group(1).split("\\."));
    int packageLength = 0;
    while (packageLength < names.size()
        && Character.isLowerCase(names.get(packageLength).codePointAt(0))) {
      packageLength++;
    }
    if (packageLength == names.size()) {
      return Optional.empty();
    }
    List<String> path = names.subList(packageLength, names.size());
    List<String> parameters = parts.group(2) == null ? null : types(parts.group(2));
    return source(names.subList(0, packageLength), path.get(0))
        .flatMap(
            text -> find(text, path, parameters).or(() -> find(text, path.subList(0, 1), null)))
        .map(JavadocText::plain);
  }

  /**
   * The types of parameters, without packages, e.g. of {@code java.lang.String name, int count}.
   */
  private static List<String> types(String parameters) {
    return parameters.isBlank()
        ? List.of()
        : Arrays.stream(parameters.split(",")).map(each -> simpleType(each.strip())).toList();
  }

  /** {@code java.util.Map.Entry<K,V> entry}: the name behind the last dot, with brackets. */
  private static String simpleType(String parameter) {
    String type =
        parameter.replaceFirst("(?<=\\S)\\s+[\\w$]+$", "").replaceAll("@\\w+\\s*|final\\s+", "");
    return type.replaceAll("<.*>", "").replace("...", "[]").replaceAll("[\\w$]+\\.", "").strip();
  }

  private Optional<String> source(List<String> packageName, String outer) {
    List<String> places = packageName.isEmpty() ? packages : List.of(String.join(".", packageName));
    for (String place : places) {
      String file = FOLDER + place.replace('.', '/') + "/" + outer + ".java";
      try (InputStream in = loader.getResourceAsStream(file)) {
        if (in != null) {
          return Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
      } catch (IOException unreadable) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  private static Optional<String> find(String source, List<String> path, List<String> parameters) {
    JavaText text = JavaText.parse(source);
    List<String> found = new ArrayList<>();
    new TreePathScanner<Void, List<String>>() {
      @Override
      public Void visitClass(ClassTree type, List<String> outer) {
        List<String> here = plus(outer, type.getSimpleName().toString());
        note(type, here, null);
        return super.visitClass(type, here);
      }

      @Override
      public Void visitMethod(MethodTree method, List<String> type) {
        boolean constructor = method.getName().contentEquals("<init>");
        List<String> here = constructor ? type : plus(type, method.getName().toString());
        note(
            method,
            here,
            method.getParameters().stream()
                .map(each -> simpleType(each.getType().toString()))
                .toList());
        return null;
      }

      @Override
      public Void visitVariable(VariableTree field, List<String> type) {
        note(field, plus(type, field.getName().toString()), null);
        return null;
      }

      private void note(Tree tree, List<String> here, List<String> types) {
        String comment = text.docs().getDocComment(getCurrentPath());
        boolean fits = Objects.equals(types, parameters);
        if (here.equals(path) && comment != null && fits && tree != null) {
          found.add(0, comment);
        }
      }
    }.scan(text.unit(), List.of());
    return found.stream().findFirst();
  }

  private static List<String> plus(List<String> path, String name) {
    List<String> longer = new ArrayList<>(path);
    longer.add(name);
    return longer;
  }
}
