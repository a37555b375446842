package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Draws the rooms and who uses whom from the code, and holds the picture in DEVELOPERS.md to it.
 */
class RoomsPictureTest {

  private static final Path GUIDE =
      Path.of(System.getProperty("taketally.root", "..")).resolve("DEVELOPERS.md");
  private static final String BEFORE = "<!-- drawn from the code: begin -->\n";
  private static final String AFTER = "<!-- drawn from the code: end -->\n";
  private static final String BASE = "org.taketally.";
  private static final JavaClasses TOOLKIT = ToolkitClasses.all();

  @Test
  void the_picture_of_the_rooms_is_the_code() throws IOException {
    String guide = Files.readString(GUIDE);
    int from = guide.indexOf(BEFORE) + BEFORE.length();
    int to = guide.indexOf(AFTER);
    assertThat(to).as("place of the picture in DEVELOPERS.md").isGreaterThan(from - 1);
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(GUIDE, guide.substring(0, from) + picture() + guide.substring(to));
      return;
    }
    assertThat(guide.substring(from, to))
        .as("picture in DEVELOPERS.md; -Dgolden=write draws it anew")
        .isEqualTo(picture());
  }

  /** A row for each room, marked under every room it uses, and its sub-rooms at the end. */
  private static String picture() {
    Map<String, Set<String>> uses = uses();
    List<String> flow = LayerTest.FLOW;
    int width = flow.stream().mapToInt(String::length).max().orElse(0);
    StringBuilder text = new StringBuilder("```text\n");
    for (int row = 0; row < width; row++) {
      text.append(" ".repeat(width + 2)).append(column(flow, row, width)).append('\n');
    }
    for (int i = 0; i < flow.size(); i++) {
      String room = flow.get(i);
      text.append(room).append(" ".repeat(width + 2 - room.length()));
      StringBuilder marks = new StringBuilder();
      for (int k = 0; k < flow.size(); k++) {
        String mark = uses.getOrDefault(room, Set.of()).contains(flow.get(k)) ? "x" : ".";
        marks.append(k == i ? "o" : k < i ? mark : " ").append(' ');
      }
      text.append((marks + " " + subRooms(room)).stripTrailing()).append('\n');
    }
    return text.append("```\n").toString().replaceAll(" +\n", "\n");
  }

  /** The names of the rooms stand upright above their columns, ending at the same height. */
  private static String column(List<String> flow, int row, int width) {
    return flow.stream()
        .map(name -> " ".repeat(width - name.length()) + name)
        .map(name -> name.substring(row, row + 1))
        .collect(Collectors.joining(" "));
  }

  private static Map<String, Set<String>> uses() {
    Map<String, Set<String>> uses = new TreeMap<>();
    for (JavaClass type : TOOLKIT) {
      Set<String> own = uses.computeIfAbsent(room(type), key -> new TreeSet<>());
      type.getDirectDependenciesFromSelf().stream()
          .map(dependency -> dependency.getTargetClass())
          .filter(target -> target.getPackageName().startsWith(BASE))
          .map(RoomsPictureTest::room)
          .forEach(own::add);
    }
    return uses;
  }

  private static String room(JavaClass type) {
    return inside(type).replaceFirst("\\..*", "");
  }

  private static String inside(JavaClass type) {
    return type.getPackageName().substring(BASE.length());
  }

  private static String subRooms(String room) {
    return TOOLKIT.stream()
        .map(RoomsPictureTest::inside)
        .filter(name -> name.startsWith(room + "."))
        .map(name -> name.substring(room.length() + 1))
        .distinct()
        .sorted()
        .collect(Collectors.joining(", "));
  }
}
