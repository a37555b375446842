package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The logit and its inverse, quantiles and Gauss-Hermite rules are each written down once. */
class OneFormulaTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));
  private static final Path SOURCES = ROOT.resolve("toolkit/src/main/java/org/taketally");

  private static final Pattern COMMENT = Pattern.compile("(?s)/\\*.*?\\*/|//[^\\n]*");

  /** A formula as it is usually written, and its home. */
  private static final Map<Pattern, String> HOMES =
      Map.of(
          Pattern.compile("/ \\(1(?:\\.0)? \\+ (?:Strict)?Math\\.exp\\("), "terms/Logit.java",
          Pattern.compile("Math\\.log\\(([\\w.\\[\\]()]+) / \\(1(?:\\.0)? - \\1\\)\\)"),
              "terms/Logit.java",
          Pattern.compile("Math\\.log1p\\(Math\\.exp\\("), "terms/Logit.java",
          Pattern.compile("(\\w+)\\[(\\w+)] \\+ \\([^;]*\\) \\* \\(\\1\\[[^]]+] - \\1\\[\\2]\\)"),
              "terms/SampleQuantiles.java",
          Pattern.compile("double \\w*[qQ]uantile\\(double\\[] (?:sorted|values|draws)"),
              "terms/SampleQuantiles.java",
          Pattern.compile("Math\\.sqrt\\(5 [-+] |double\\[] hermite\\("),
              "model/numeric/GaussHermite.java");

  @Test
  void each_formula_stands_in_its_home_only() throws IOException {
    List<String> strangers = new ArrayList<>();
    try (Stream<Path> files = Files.walk(SOURCES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        String name = SOURCES.relativize(file).toString().replace('\\', '/');
        strangers.addAll(strangers(name, Files.readString(file)));
      }
    }
    assertThat(strangers).as("call Logit, SampleQuantiles or GaussHermite instead").isEmpty();
  }

  @Test
  void sees_a_second_one() {
    assertThat(strangers("a/A.java", "return 1 / (1 + Math.exp(-x));")).hasSize(1);
    assertThat(strangers("a/A.java", "return n[i] / (1 + StrictMath.exp(-eta[i]));")).hasSize(1);
    assertThat(strangers("a/A.java", "return Math.log(p[i] / (1 - p[i]));")).hasSize(1);
    assertThat(strangers("a/A.java", "Math.max(0, x) + Math.log1p(Math.exp(-x))")).hasSize(1);
    assertThat(strangers("a/A.java", "return s[low] + (x - low) * (s[low + 1] - s[low]);"))
        .hasSize(1);
    assertThat(strangers("a/A.java", "double quantile(double[] sorted, double share) {"))
        .hasSize(1);
    assertThat(strangers("a/A.java", "{0, Math.sqrt(5 - ROOT10)}")).hasSize(1);
    assertThat(strangers("terms/Logit.java", "return 1 / (1 + Math.exp(-x));")).isEmpty();
    assertThat(strangers("a/A.java", "/** 1 / (1 + Math.exp(-x)) */ int i;")).isEmpty();
  }

  private static List<String> strangers(String name, String source) {
    String code = COMMENT.matcher(source).replaceAll("");
    List<String> found = new ArrayList<>();
    HOMES.forEach(
        (formula, home) -> {
          Matcher uses = formula.matcher(code);
          while (!name.equals(home) && uses.find()) {
            found.add(name + ": " + uses.group());
          }
        });
    return found;
  }
}
