package org.taketally.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The program's jar: small, whole, and with everybody's licence. */
class PackagedJarIT {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root"));
  private static final Path JAR = Path.of(System.getProperty("taketally.jar"));
  private static final Pattern TRIMMED =
      Pattern.compile("(it/unimi/dsi/fastutil|com/google/common|org/apache/commons/compress)/");

  private static List<String> entries() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      return jar.stream().map(entry -> entry.getName()).toList();
    }
  }

  private static List<String> libraries() throws IOException {
    String all = Files.readString(JAR.resolveSibling("libraries.txt")).strip();
    return Stream.of(all.split(Pattern.quote(File.pathSeparator)))
        .map(path -> Path.of(path).getFileName().toString().replaceFirst("\\.jar$", ""))
        .toList();
  }

  @Test
  void is_under_twenty_five_megabytes() throws IOException {
    assertThat(Files.size(JAR)).isLessThan(25_000_000);
  }

  @Test
  void holds_the_licence_of_everything_in_it() throws IOException {
    List<String> entries = entries();
    assertThat(entries)
        .contains(
            "META-INF/LICENSE",
            "META-INF/licences/dependencies.md",
            "META-INF/licences/Apache-2.0.txt",
            "META-INF/licences/MIT.txt",
            "META-INF/licences/MPL-2.0.txt",
            "META-INF/licences/commons-math3-3.6.1/NOTICE.txt");
    try (JarFile jar = new JarFile(JAR.toFile())) {
      String licence =
          new String(
              jar.getInputStream(jar.getEntry("META-INF/LICENSE")).readAllBytes(),
              java.nio.charset.StandardCharsets.UTF_8);
      assertThat(licence).contains("GNU GENERAL PUBLIC LICENSE", "Version 3");
    }
  }

  /**
   * Every library of the program stands in docs/dependencies.md with its version, and none else.
   */
  @Test
  void every_library_is_described() throws IOException {
    Matcher rows =
        Pattern.compile("(?m)^\\| `[^`:]+:([^`]+)` \\| ([^ |]+) \\| [^|]+ \\|")
            .matcher(Files.readString(ROOT.resolve("docs/dependencies.md")));
    List<String> described = new ArrayList<>();
    while (rows.find()) {
      described.add(rows.group(1) + "-" + rows.group(2));
    }
    assertThat(described).containsExactlyInAnyOrderElementsOf(libraries());
  }

  /** Linking all classes against the jar alone, no class of a trimmed library is missed. */
  @Test
  void nothing_kept_misses_a_class_left_out() throws Exception {
    List<String> missed = new ArrayList<>();
    long linked = 0;
    try (URLClassLoader jar =
        new URLClassLoader(new URL[] {JAR.toUri().toURL()}, ClassLoader.getPlatformClassLoader())) {
      for (String entry : entries()) {
        if (entry.matches("(tech/tablesaw|smile|org/taketally)/.*\\.class")) {
          String name = entry.replace('/', '.').replaceFirst("\\.class$", "");
          try {
            Class<?> type = Class.forName(name, false, jar);
            linked +=
                type.getDeclaredMethods().length
                    + type.getDeclaredFields().length
                    + type.getDeclaredConstructors().length;
          } catch (NoClassDefFoundError absent) {
            if (TRIMMED.matcher(String.valueOf(absent.getMessage())).find()) {
              missed.add(name + " misses " + absent.getMessage());
            }
          }
        }
      }
    }
    assertThat(missed).isEmpty();
    assertThat(linked).isGreaterThan(10_000);
  }
}
