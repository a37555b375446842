package org.taketally.notebook.kernel.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import jdk.jshell.JShell;
import jdk.jshell.VarSnippet;

/** What could stand within quotes: words that the values of variables know, and names of files. */
final class Words {

  private static final int FILES = 200;
  private static final Pattern QUOTED = Pattern.compile("\"([^\"\\n]*)\"");

  private final JShell shell;
  private final Function<VarSnippet, Object> values;
  private final BiFunction<Object, String, Collection<String>> known;

  /**
   * Words of one session.
   *
   * @param shell knows the variables
   * @param values gives their values
   * @param known gives the words a value knows, by what was quoted last before
   */
  Words(
      JShell shell,
      Function<VarSnippet, Object> values,
      BiFunction<Object, String, Collection<String>> known) {
    this.shell = shell;
    this.values = values;
    this.known = known;
  }

  /**
   * Words that begin as a text does; those of variables named in the statement come first.
   *
   * @param begun the text within quotes up to the cursor
   * @param statement what stands before it
   */
  List<String> at(String begun, String statement) {
    Set<String> words = new LinkedHashSet<>();
    List<VarSnippet> variables = shell.variables().toList();
    String before = lastQuoted(statement);
    variables.stream()
        .filter(each -> isNamed(each, statement))
        .forEach(each -> add(each, before, words));
    if (words.isEmpty()) {
      variables.forEach(each -> add(each, before, words));
    }
    words.addAll(files(begun));
    return words.stream().filter(word -> word.startsWith(begun)).map(Words::escaped).toList();
  }

  private static boolean isNamed(VarSnippet variable, String statement) {
    return Pattern.compile("\\b" + Pattern.quote(variable.name()) + "\\b")
        .matcher(statement)
        .find();
  }

  private static String lastQuoted(String statement) {
    Matcher quoted = QUOTED.matcher(statement);
    String last = "";
    while (quoted.find()) {
      last = quoted.group(1);
    }
    return last;
  }

  private void add(VarSnippet variable, String before, Set<String> words) {
    Object value = values.apply(variable);
    if (value != null) {
      words.addAll(known.apply(value, before));
    }
  }

  private static List<String> files(String begun) {
    String folder = begun.substring(0, begun.lastIndexOf('/') + 1);
    try (Stream<Path> files = Files.list(Path.of(folder.isEmpty() ? "." : folder))) {
      return files
          .filter(file -> !file.getFileName().toString().startsWith("."))
          .map(file -> folder + file.getFileName() + (Files.isDirectory(file) ? "/" : ""))
          .sorted()
          .limit(FILES)
          .toList();
    } catch (IOException | InvalidPathException none) {
      return List.of();
    }
  }

  private static String escaped(String word) {
    return word.replace("\\", "\\\\").replace("\"", "\\\"");
  }
}
