package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.notebook.jupyter.Jupyter.Ran;

/** {@code taketally notebook run} and {@code list} as a user types them. */
@Timeout(180)
class NotebookCommandsIT {

  private static final String NOTEBOOK =
      """
      {"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [
       {"cell_type": "markdown", "id": "a", "metadata": {}, "source": "# How many took?"},
       {"cell_type": "code", "id": "b", "metadata": {"tags": ["parameters"]}, "execution_count": null, "source": "int takes = 41;", "outputs": []},
       {"cell_type": "code", "id": "c", "metadata": {}, "execution_count": null, "source": "%s", "outputs": []}]}
      """;

  @TempDir private Path folder;

  private Path notebook(String name, String lastCell) throws Exception {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, NOTEBOOK.formatted(lastCell.replace("\"", "\\\"")));
  }

  @Test
  void runs_here_and_writes_notebook_and_page() throws Exception {
    notebook("a.ipynb", "takes + 1");
    Ran ran = Jupyter.taketally(folder, "notebook", "run", "a.ipynb", "--set", "takes=7", "--html");
    assertThat(ran.status()).as(ran.output()).isZero();
    assertThat(ran.output())
        .isEqualTo("a.ipynb: ran 2 cells\nwrote executed/a.ipynb\nwrote executed/a.html\n");
    assertThat(Files.readString(folder.resolve("executed/a.ipynb")))
        .contains("\"int takes = 7;\"", "\"8\"");
    assertThat(Files.readString(folder.resolve("executed/a.html")))
        .contains("<title>How many took?</title>");
  }

  @Test
  void paths_begin_at_the_notebooks_own_folder() throws Exception {
    notebook("deep/b.ipynb", "Files.readString(Path.of(\"beside.txt\"))");
    Files.writeString(folder.resolve("deep/beside.txt"), "found it");
    Ran ran = Jupyter.taketally(folder, "notebook", "run", "deep/b.ipynb", "--out", "out");
    assertThat(ran.status()).as(ran.output()).isZero();
    assertThat(Files.readString(folder.resolve("out/b.ipynb"))).contains("found it");
  }

  @Test
  void a_cell_that_fails_is_shown_and_gives_status_1() throws Exception {
    notebook("c.ipynb", "takes / 0");
    Ran ran = Jupyter.taketally(folder, "notebook", "run", "c.ipynb");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.output())
        .contains(
            """
            c.ipynb, cell [2] failed:

                takes / 0

            java.lang.ArithmeticException: / by zero
              at cell [2], line 1\
            """);
    assertThat(Files.readString(folder.resolve("executed/c.ipynb")))
        .contains("\"ename\": \"java.lang.ArithmeticException\"");
  }

  @Test
  void notebooks_that_are_missing_or_would_replace_each_other_are_named_before_any_runs()
      throws Exception {
    notebook("e.ipynb", "takes");
    notebook("deep/e.ipynb", "takes");
    Ran missing = Jupyter.taketally(folder, "notebook", "run", "e.ipynb", "gone.ipynb");
    assertThat(missing.status()).isEqualTo(2);
    assertThat(missing.output()).contains("no file \"gone.ipynb\"; check the name and the folder");
    Ran twice = Jupyter.taketally(folder, "notebook", "run", "e.ipynb", "deep/e.ipynb");
    assertThat(twice.status()).isEqualTo(2);
    assertThat(twice.output()).contains("two notebooks are named e.ipynb");
    assertThat(folder.resolve("executed")).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"d.ipynb", "deep/d.ipynb"})
  void a_cell_that_ends_its_process_is_noticed(String place) throws Exception {
    notebook(place, "Runtime.getRuntime().halt(0)");
    Ran ran = Jupyter.taketally(folder, "notebook", "run", place);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.output()).contains("the kernel's process ended while this cell ran");
  }

  @Test
  void a_notebook_is_not_replaced_by_its_own_copy() throws Exception {
    Path notebook = notebook("i.ipynb", "1");
    String before = Files.readString(notebook);
    Files.createSymbolicLink(folder.resolve("link"), folder);
    for (String out : new String[] {".", "link", "link/link/./"}) {
      Ran ran = Jupyter.taketally(folder, "notebook", "run", "i.ipynb", "--out", out);
      assertThat(ran.status()).isEqualTo(2);
      assertThat(ran.output()).contains("i.ipynb is one of the files being read");
    }
    assertThat(Files.readString(notebook)).isEqualTo(before);
  }

  @Test
  void a_kernel_does_not_outlive_a_run_that_is_killed() throws Exception {
    notebook("j.ipynb", "Thread.sleep(600_000)");
    Process run =
        Jupyter.process(
                folder, Jupyter.java("-jar", Jupyter.JAR.toString(), "notebook", "run", "j.ipynb"))
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    while (run.isAlive() && run.descendants().findAny().isEmpty()) {
      Thread.sleep(50);
    }
    ProcessHandle kernel = run.descendants().findAny().orElseThrow();
    run.destroyForcibly().waitFor();
    kernel.onExit().get(60, TimeUnit.SECONDS);
  }

  @Test
  void an_exit_that_was_held_does_not_keep_the_command() throws Exception {
    notebook("e.ipynb", "Runtime.getRuntime().exit(3)");
    Ran ran = Jupyter.taketally(folder, "notebook", "run", "e.ipynb");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.output()).contains("ExitRefused");
  }

  /** The cleaning of exported pages takes SVG out; the marks must be there all the same. */
  @Test
  void a_figure_is_in_the_page_that_nbconvert_exports() throws Exception {
    Path nbconvert = Path.of("/usr/bin/jupyter-nbconvert");
    Jupyter.require("Jupyter's nbconvert", nbconvert);
    notebook(
        "k.ipynb", "svg(\"<svg width='40' height='20'><circle r='3' fill='#112233'/></svg>\")");
    Ran ran = Jupyter.taketally(folder, "notebook", "run", "k.ipynb");
    assertThat(ran.status()).as(ran.output()).isZero();
    Ran exported = Jupyter.run(folder, nbconvert.toString(), "--to", "html", "executed/k.ipynb");
    assertThat(exported.status()).as(exported.output()).isZero();
    String page = Files.readString(folder.resolve("executed/k.html"));
    String figure = page.replaceFirst("(?s).*data:image/svg\\+xml;base64,([^\"]*)\".*", "$1");
    assertThat(new String(Base64.getDecoder().decode(figure), StandardCharsets.UTF_8))
        .contains("<circle r='3'");
  }

  @Test
  void wrong_use_gives_status_2() throws Exception {
    notebook("f.ipynb", "1");
    Ran unknown = Jupyter.taketally(folder, "notebook", "run", "f.ipynb", "--set", "grafts=1");
    assertThat(unknown.status()).isEqualTo(2);
    assertThat(unknown.output()).contains("no parameter \"grafts\"; this notebook has: takes");
    Ran missing = Jupyter.taketally(folder, "notebook", "run", "none.ipynb");
    assertThat(missing.status()).isEqualTo(2);
    assertThat(missing.output()).contains("none.ipynb");
    Ran limit = Jupyter.taketally(folder, "notebook", "run", "f.ipynb", "--timeout", "0");
    assertThat(limit.output()).contains("--timeout: found 0.0, expected seconds above 0");
  }

  @Test
  void lists_kernels_and_notebooks() throws Exception {
    Jupyter.kernel();
    notebook("g.ipynb", "1");
    Files.writeString(folder.resolve("h.ipynb"), "{}");
    Ran ran = Jupyter.taketally(folder, "notebook", "list");
    assertThat(ran.status()).as(ran.output()).isZero();
    assertThat(ran.output())
        .contains("taketally (Taketally (Java)) in " + Jupyter.kernel())
        .contains("g.ipynb: How many took? (2 code cells, not run)")
        .contains("h.ipynb: can't be read");
  }
}
