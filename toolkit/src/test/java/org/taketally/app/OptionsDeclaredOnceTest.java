package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.taketally.ToolkitClasses;
import picocli.CommandLine.Option;

/** An option that several commands take is declared in one class, which they mix in. */
class OptionsDeclaredOnceTest {

  /** Names that stand for different things, or are asked for in different ways. */
  private static final Map<String, String> ELSE =
      Map.of(
          "--out", "a folder for pages beside the answers, one for everything, or a text's file",
          "--crop", "limits that rows are checked by, or how long wood keeps before --request",
          "--margin", "of the verdict, or of the cheapest stock and idle without --stock-price",
          "--take", "of lines of an order that state none, or of the first stock of a trial",
          "--cultivars", "names, required, or how many of those in the records",
          "--grafters", "required, or left to the records",
          "--days", "required, or three",
          "--trials", "of a layout, a hundred, or of grafts to come, by the size of the records");

  @Test
  void every_name_stands_in_one_class() {
    Map<String, Set<String>> found = repeated(ToolkitClasses.in("org.taketally.app"));
    assertThat(found.keySet())
        .as("declare it once and mix it in: %s", found)
        .containsExactlyInAnyOrderElementsOf(ELSE.keySet());
  }

  @Test
  void a_name_declared_again_is_seen() {
    assertThat(repeated(new ClassFileImporter().importClasses(One.class, Other.class)))
        .containsOnlyKeys("--same");
  }

  private static Map<String, Set<String>> repeated(Iterable<JavaClass> classes) {
    Map<String, Set<String>> declared = new TreeMap<>();
    for (JavaClass each : classes) {
      each.getFields().stream()
          .filter(field -> field.isAnnotatedWith(Option.class))
          .flatMap(field -> Set.of(field.getAnnotationOfType(Option.class).names()).stream())
          .forEach(
              name ->
                  declared.computeIfAbsent(name, any -> new TreeSet<>()).add(each.getSimpleName()));
    }
    declared.values().removeIf(places -> places.size() < 2);
    return declared;
  }

  @SuppressWarnings("UnusedVariable") // declared only
  private static final class One {
    @Option(names = {"-s", "--same"})
    private boolean same;

    @Option(names = "--one")
    private boolean one;
  }

  @SuppressWarnings("UnusedVariable") // declared only
  private static final class Other {
    @Option(names = "--same")
    private boolean same;
  }
}
