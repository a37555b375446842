package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What the README prints of the demo, shortened at lines of three dots. */
final class ReadmeDemo {

  private static final Path README =
      Path.of(System.getProperty("taketally.root", "..")).resolve("README.md");
  private static final String MARGIN = "    ";
  private static final String CUT = "...";

  private ReadmeDemo() {}

  /** Every stretch of lines stands in the demo's output, in that order and unbroken. */
  static void assertPrintedBy(String output) throws IOException {
    List<String> stretches = stretches();
    assertThat(stretches).as("stretches of the demo in the README").hasSizeGreaterThan(1);
    int from = 0;
    for (String stretch : stretches) {
      int at = output.indexOf(stretch, from);
      if (at < 0) {
        assertThat(output).as("output of the demo, as README.md prints it").contains(stretch);
      }
      from = at + stretch.length();
    }
  }

  private static List<String> stretches() throws IOException {
    List<String> stretches = new ArrayList<>();
    StringBuilder stretch = new StringBuilder();
    for (String line : section().split("\\n", -1)) {
      boolean printed = line.startsWith(MARGIN) && !line.strip().equals(CUT);
      if (printed) {
        stretch.append(line.substring(MARGIN.length())).append('\n');
      } else if (!stretch.isEmpty()) {
        stretches.add(stretch.toString());
        stretch.setLength(0);
      }
    }
    return stretches;
  }

  /** From the demo's first line to the first figure. */
  private static String section() throws IOException {
    String readme = Files.readString(README);
    int start = readme.indexOf("## What it answers");
    return readme.substring(start, readme.indexOf("![", start));
  }
}
