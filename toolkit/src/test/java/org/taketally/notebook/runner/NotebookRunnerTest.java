package org.taketally.notebook.runner;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Notebooks run without Jupyter. */
@Timeout(120)
class NotebookRunnerTest {

  @TempDir private Path folder;

  private Path notebook(JsonObject... cells) throws IOException {
    JsonArray all = new JsonArray();
    for (JsonObject cell : cells) {
      all.add(cell);
    }
    JsonObject json = new JsonObject();
    json.add("cells", all);
    json.addProperty("nbformat", 4);
    json.addProperty("nbformat_minor", 2);
    JsonObject metadata = new JsonObject();
    metadata.addProperty("season", "2024");
    json.add("metadata", metadata);
    return Files.writeString(folder.resolve("test.ipynb"), json.toString());
  }

  private static JsonObject code(String source, String... tags) {
    JsonObject cell = new JsonObject();
    cell.addProperty("cell_type", "code");
    cell.add("source", NotebookJson.lines(source));
    JsonObject metadata = new JsonObject();
    JsonArray tagged = new JsonArray();
    List.of(tags).forEach(tagged::add);
    metadata.add("tags", tagged);
    cell.add("metadata", metadata);
    JsonObject old = new JsonObject();
    old.addProperty("output_type", "stream");
    old.addProperty("name", "stdout");
    old.add("text", NotebookJson.lines("of an earlier run\n"));
    JsonArray outputs = new JsonArray();
    outputs.add(old);
    cell.add("outputs", outputs);
    cell.addProperty("execution_count", 77);
    return cell;
  }

  private static JsonObject text(String source) {
    JsonObject cell = new JsonObject();
    cell.addProperty("cell_type", "markdown");
    cell.addProperty("source", source);
    cell.add("metadata", new JsonObject());
    return cell;
  }

  private static RunReport run(Path notebook) throws IOException {
    return NotebookRunner.with(RunOptions.usual()).run(notebook);
  }

  private static List<String> outputs(RunReport report, int cell) {
    return report.notebook().cells().get(cell).outputTexts();
  }

  @Test
  void runs_from_top_to_bottom_and_numbers_the_cells() throws Exception {
    RunReport report =
        run(
            notebook(
                text("# Does it take?"),
                code("int grafts = 50;\nint takes = 41;"),
                code("System.out.println(\"counted\");\n100 * takes / grafts"),
                code("  ")));
    assertThat(report.failure()).isEmpty();
    assertThat(report.cellsRun()).isEqualTo(2);
    assertThat(report.notebook().title()).isEqualTo("Does it take?");
    assertThat(outputs(report, 1)).isEmpty();
    assertThat(outputs(report, 2)).containsExactly("counted\n", "82");
    assertThat(report.notebook().cells().get(2).executionCount()).contains(2);
  }

  @Test
  void merges_prints_and_honours_carriage_returns() throws Exception {
    RunReport report =
        run(
            notebook(
                code(
                    "for (int i = 0; i < 3; i++) { System.out.print(\"\\r"
                        + "\" + i + \" done\"); Thread.sleep(60); }\n"
                        + "System.out.println();\n"
                        + "System.err.println(\"aside\");\n"
                        + "System.out.println(\"end\");")));
    assertThat(outputs(report, 0)).containsExactly("2 done\n", "aside\n", "end\n");
  }

  @Test
  void updates_displays_and_clears_output() throws Exception {
    RunReport report =
        run(
            notebook(
                code("System.out.println(\"old\");\nclear();\nString id = display(\"first\");"),
                code("update(id, html(\"<i>second</i>\"));")));
    assertThat(outputs(report, 0)).containsExactly("second");
    assertThat(outputs(report, 1)).isEmpty();
    assertThat(report.notebook().cells().get(0).outputs().toString())
        .contains("<i>second</i>")
        .doesNotContain("transient", "display_id");
  }

  @Test
  void stops_at_the_first_error_and_leaves_nothing_stale() throws Exception {
    RunReport report =
        run(notebook(code("1 + 1"), code("int[] none = {};\nnone[3]"), code("\"never\"")));
    assertThat(report.failure()).isPresent();
    assertThat(report.failure().get().count()).isEqualTo(2);
    assertThat(report.failure().get().sentence())
        .startsWith(
            """
            cell [2] failed:

                int[] none = {};
                none[3]

            java.lang.ArrayIndexOutOfBoundsException: Index 3 out of bounds for length 0
              at cell [2], line 2\
            """);
    assertThat(outputs(report, 0)).containsExactly("2");
    assertThat(outputs(report, 1))
        .containsExactly(
            "java.lang.ArrayIndexOutOfBoundsException: Index 3 out of bounds for length 0");
    assertThat(outputs(report, 2)).isEmpty();
    assertThat(report.notebook().cells().get(2).executionCount()).isEmpty();
  }

  @Test
  void errors_may_be_allowed_for_a_cell_or_for_all() throws Exception {
    Path one = notebook(code("1 / 0", "raises-exception"), code("\"on\""));
    assertThat(outputs(run(one), 1)).containsExactly("on");
    Path all = notebook(code("1 / 0"), code("\"on\""));
    RunReport report = NotebookRunner.with(RunOptions.usual().allowErrors(true)).run(all);
    assertThat(report.failure()).isEmpty();
    assertThat(outputs(report, 1)).containsExactly("on");
  }

  @Test
  void skips_cells_so_tagged() throws Exception {
    RunReport report = run(notebook(code("1 / 0", "skip-execution"), code("3")));
    assertThat(outputs(report, 0)).containsExactly("of an earlier run\n");
    assertThat(report.notebook().cells().get(1).executionCount()).contains(1);
  }

  @Test
  void a_cell_that_takes_too_long_is_interrupted() throws Exception {
    RunReport report =
        NotebookRunner.with(RunOptions.usual().timeout(Duration.ofMillis(300)))
            .run(notebook(code("while (true) { }"), code("2")));
    assertThat(report.failure().orElseThrow().error().message())
        .isEqualTo("the cell took longer than its time limit of 0.3 s");
  }

  @Test
  void parameters_take_new_values_where_they_are_declared() throws Exception {
    Path notebook =
        notebook(
            code(
                """
                double margin = 0.10; // indifference, share of grafts
                String crop = "avocado";
                int seed = 2 * 3;\
                """,
                "parameters"),
            code("crop + \" \" + margin + \" \" + seed"));
    RunReport report =
        NotebookRunner.with(RunOptions.usual().set("margin", "0.05").set("crop", "a \"walnut\""))
            .run(notebook);
    assertThat(report.notebook().cells().get(0).source())
        .isEqualTo(
            """
            double margin = 0.05; // indifference, share of grafts
            String crop = "a \\"walnut\\"";
            int seed = 2 * 3;\
            """);
    assertThat(outputs(report, 1)).containsExactly("a \"walnut\" 0.05 6");
    assertThatThrownBy(
            () -> NotebookRunner.with(RunOptions.usual().set("margn", "1")).run(notebook))
        .hasMessage("no parameter \"margn\"; this notebook has: margin, crop, seed");
  }

  @Test
  void refuses_parameters_where_there_are_none() throws Exception {
    Path notebook = notebook(code("1"));
    assertThatThrownBy(() -> NotebookRunner.with(RunOptions.usual().set("a", "1")).run(notebook))
        .hasMessage("the notebook has no cell tagged \"parameters\", so nothing can be set");
  }

  @Test
  void writes_format_4_5_and_keeps_what_it_does_not_know() throws Exception {
    RunReport report = run(notebook(text("a"), text("a"), code("svg(\"<svg>\\n</svg>\")")));
    Path out = folder.resolve("out.ipynb");
    report.notebook().write(out);
    String written = Files.readString(out);
    assertThat(written)
        .startsWith("{\n \"cells\": [\n  {\n   \"cell_type\": \"markdown\",\n   \"id\": \"")
        .endsWith(" \"nbformat\": 4,\n \"nbformat_minor\": 5\n}\n")
        .contains("\"season\": \"2024\"", "\"name\": \"taketally\"", "\"language_info\": {")
        .contains("\"image/svg+xml\": [\n       \"<svg>\\n\",\n       \"</svg>\"\n      ]");
    List<String> ids = new ArrayList<>();
    written.lines().filter(line -> line.contains("\"id\": ")).forEach(ids::add);
    assertThat(ids).hasSize(3).doesNotHaveDuplicates();
    assertThat(written).doesNotContain("execution\": {");
    report.notebook().write(out);
    assertThat(Files.readString(out)).isEqualTo(written);
  }

  @Test
  void notes_times_if_asked() throws Exception {
    RunReport report =
        NotebookRunner.with(RunOptions.usual().timing(true)).run(notebook(code("1")));
    assertThat(report.notebook().cells().get(0).metadata().getAsJsonObject("execution").keySet())
        .containsExactly("iopub.status.busy", "iopub.status.idle");
  }

  @Test
  void nobody_is_asked() throws Exception {
    RunReport report = run(notebook(code("ask(\"Name? \")")));
    assertThat(report.failure().orElseThrow().error().message())
        .isEqualTo("nobody can be asked while a notebook runs by itself: Name? ");
  }

  @Test
  void tells_its_progress() throws Exception {
    List<String> told = new ArrayList<>();
    NotebookRunner.with(RunOptions.usual())
        .telling((done, all) -> told.add(done + "/" + all))
        .run(notebook(code("1"), code("2")));
    assertThat(told).containsExactly("0/2", "1/2", "2/2");
  }

  @Test
  void refuses_what_is_no_notebook() throws Exception {
    Path broken = Files.writeString(folder.resolve("broken.ipynb"), "{\"cells\": [");
    assertThatThrownBy(() -> Notebook.read(broken))
        .hasMessageContaining("broken.ipynb: not a notebook");
    Path old =
        Files.writeString(folder.resolve("old.ipynb"), "{\"nbformat\": 3, \"worksheets\": []}");
    assertThatThrownBy(() -> Notebook.read(old))
        .hasMessage(
            old
                + ": not a notebook: nbformat: found 3, expected notebook format 4; open it in"
                + " Jupyter and save it again");
  }
}
