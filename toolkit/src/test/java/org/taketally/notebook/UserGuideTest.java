package org.taketally.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
        assertThat(printed.text.toString()).as(pieces.get(i)).isNotBlank();
      }
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
