package org.taketally.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.taketally.notebook.kernel.engine.Engine;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.CellResult;
import org.taketally.notebook.kernel.engine.output.Output;

/** Every piece of Java in docs/guide.md runs, in order, as in a notebook. */
class UserGuideTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));
  private static final Pattern PIECE = Pattern.compile("(?s)```java\\n(.*?)```");

  @Test
  void every_piece_runs_and_prints() throws IOException {
    List<String> pieces = new ArrayList<>();
    Matcher matcher = PIECE.matcher(Files.readString(ROOT.resolve("docs/guide.md")));
    while (matcher.find()) {
      pieces.add(
          matcher.group(1).replace("Path.of(\"datasets", "Path.of(\"" + root() + "/datasets"));
    }
    assertThat(pieces).hasSizeGreaterThan(8);
    Printed printed = new Printed();
    try (Engine engine = Engine.start(ToolkitKernel.setup().engine(), printed)) {
      for (int i = 0; i < pieces.size(); i++) {
        printed.text.setLength(0);
        CellResult result = engine.run(i + 1, pieces.get(i));
        assertThat(result.error()).as(pieces.get(i)).isEmpty();
        assertThat(printed.text.toString())
            .as(pieces.get(i))
            .isNotBlank()
            .doesNotContain("Optional", "can't be used until");
      }
      assertPlansShowThemselves(engine, pieces.size());
    }
  }

  /** Each with all its words in plain text, and a figure or a table beside. */
  private static void assertPlansShowThemselves(Engine engine, int ran) {
    Map<String, List<String>> shown = new LinkedHashMap<>();
    shown.put("order", List.of("Saleable of the grafts", "<img", "<table"));
    shown.put("budwood", List.of("Cut on", "<table"));
    shown.put("chances", List.of("the verdict would be", "<img"));
    shown.put("next", List.of("Chance that it is settled", "<img", "<details>"));
    int count = ran;
    for (Map.Entry<String, List<String>> name : shown.entrySet()) {
      count++;
      CellResult result = engine.run(count, name.getKey());
      assertThat(result.error()).as(name.getKey()).isEmpty();
      Bundle value = result.value().orElseThrow();
      String html = value.data().get("text/html").getAsString();
      assertThat(html).as(name.getKey()).contains(name.getValue());
      assertThat(value.plainText())
          .as(name.getKey())
          .contains(name.getValue().get(0))
          .doesNotContain("[", "@", "Optional", "<");
    }
  }

  private static String root() {
    return ROOT.toAbsolutePath().normalize().toString().replace('\\', '/');
  }

  /** Keeps what cells print. */
  private static final class Printed implements Output {

    private final StringBuilder text = new StringBuilder();

    @Override
    public void print(String stream, String printed) {
      text.append(printed);
    }

    @Override
    public void display(Bundle bundle) {}

    @Override
    public void update(Bundle bundle) {}

    @Override
    public void clear(boolean wait) {}

    @Override
    public void page(Bundle bundle) {}

    @Override
    public String ask(String prompt, boolean secret, Question question) {
      return "";
    }
  }
}
