package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** No class needs itself by way of others, and no room below another leads back to its sister. */
class CycleTest {

  private static final String BASE = "org.taketally.";
  private static final JavaClasses TOOLKIT = ToolkitClasses.all();

  static List<String> everyRoom() {
    return LayerTest.FLOW;
  }

  /** The root of a room counts as one of its packages. */
  @ParameterizedTest
  @MethodSource("everyRoom")
  void packages_lead_one_way(String room) {
    assertThat(cycles(room, JavaClass::getPackageName)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("everyRoom")
  void classes_lead_one_way(String room) {
    assertThat(cycles(room, CycleTest::outer)).isEmpty();
  }

  @Test
  void finds_a_cycle_where_there_is_one() {
    Map<String, Set<String>> needs =
        Map.of("A", Set.of("B"), "B", Set.of("C"), "C", Set.of("A", "D"), "D", Set.of());
    assertThat(cycles(needs)).containsExactly(List.of("A", "B", "C"));
  }

  /** Parts of a room that need each other, by the name of the part a class belongs to. */
  private static List<List<String>> cycles(String room, Function<JavaClass, String> part) {
    Map<String, Set<String>> needs = new TreeMap<>();
    for (JavaClass type : TOOLKIT) {
      if (in(room, type)) {
        Set<String> own = needs.computeIfAbsent(part.apply(type), key -> new TreeSet<>());
        type.getDirectDependenciesFromSelf().stream()
            .map(dependency -> dependency.getTargetClass())
            .filter(target -> in(room, target))
            .map(part)
            .filter(target -> !target.equals(part.apply(type)))
            .forEach(own::add);
      }
    }
    return cycles(needs);
  }

  private static boolean in(String room, JavaClass type) {
    String name = type.getPackageName();
    return name.equals(BASE + room) || name.startsWith(BASE + room + ".");
  }

  /** A nested class counts as the one it stands in. */
  private static String outer(JavaClass type) {
    String name = type.getName().replaceFirst("\\[.*", "");
    return name.replaceFirst("\\$.*", "");
  }

  /** Sets of names that reach each other. */
  private static List<List<String>> cycles(Map<String, Set<String>> needs) {
    Map<String, Set<String>> reached = new HashMap<>();
    needs.keySet().forEach(name -> reached.put(name, reach(needs, name)));
    Set<List<String>> found = new TreeSet<>((a, b) -> a.toString().compareTo(b.toString()));
    for (String name : needs.keySet()) {
      List<String> knot =
          reached.get(name).stream()
              .filter(other -> reached.getOrDefault(other, Set.of()).contains(name))
              .sorted()
              .toList();
      if (knot.size() > 1) {
        found.add(knot);
      }
    }
    return new ArrayList<>(found);
  }

  private static Set<String> reach(Map<String, Set<String>> needs, String from) {
    Set<String> seen = new TreeSet<>();
    Deque<String> next = new ArrayDeque<>(needs.getOrDefault(from, Set.of()));
    while (!next.isEmpty()) {
      String name = next.pop();
      if (seen.add(name)) {
        next.addAll(needs.getOrDefault(name, Set.of()));
      }
    }
    return seen;
  }
}
