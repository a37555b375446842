package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a researcher does in Jupyter Notebook, in a real browser: run a notebook, see its figures,
 * complete a name, stop an endless loop and go on. Pictures go to {@code target/browser}.
 */
@Timeout(300)
class NotebookInBrowserIT {

  private static final Path JUPYTER = Path.of("/usr/bin/jupyter-notebook");
  private static final String NOTEBOOK = "3-does-rootstock-matter.ipynb";
  private static final Path PICTURES = Jupyter.TARGET.resolve("browser");

  /** The last cell with code. */
  private static final String LAST =
      "Jupyter.notebook.get_cells().filter(c => c.cell_type == 'code' && c.get_text()).pop()";

  private static final String IDLE = "document.querySelector('.kernel_idle_icon')";
  private static final String BUSY = "Boolean(document.querySelector('.kernel_busy_icon'))";
  private static final String SELECTED = "Jupyter.notebook.get_selected_cell()";

  @TempDir private Path folder;

  private Process server;
  private Browser browser;

  /** A copy, because Jupyter saves what it shows. */
  @BeforeEach
  void open() throws Exception {
    Jupyter.require("Jupyter Notebook", JUPYTER);
    Jupyter.require("a browser", Browser.CHROMIUM, Browser.DRIVER);
    Jupyter.kernel();
    copy("notebooks", NOTEBOOK);
    copy("datasets/halden-bay-avocado", "*.csv");
    copy("datasets/halden-bay-walnut", "*.csv");
    int port = Browser.freePort();
    String token = UUID.randomUUID().toString();
    server = serve(port, token);
    browser = Browser.open(folder);
    String address = "http://127.0.0.1:%d/notebooks/notebooks/%s?token=%s";
    Browser.await(
        "Jupyter",
        () -> {
          browser.go(address.formatted(port, NOTEBOOK, token));
          return true;
        });
    browser.until(
        "window.Jupyter && Jupyter.notebook && Jupyter.notebook.kernel"
            + " && Jupyter.notebook.kernel.is_connected() && Jupyter.notebook._fully_loaded");
  }

  private void copy(String from, String names) throws IOException {
    Path target = Files.createDirectories(folder.resolve(from));
    try (DirectoryStream<Path> files =
        Files.newDirectoryStream(Jupyter.ROOT.resolve(from), names)) {
      for (Path file : files) {
        Files.copy(file, target.resolve(file.getFileName()));
      }
    }
  }

  private Process serve(int port, String token) throws IOException {
    List<String> command =
        List.of(
            JUPYTER.toString(),
            "--no-browser",
            "--allow-root",
            "--ip=127.0.0.1",
            "--port=" + port,
            "--port-retries=0",
            "--NotebookApp.token=" + token,
            "--notebook-dir=" + folder);
    return Jupyter.process(folder, command)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("jupyter.txt").toFile())
        .start();
  }

  /** Jupyter ends its kernels when it is told to end. */
  @AfterEach
  void close() throws Exception {
    try {
      if (browser != null) {
        browser.photograph(PICTURES.resolve("end.png"));
        browser.quit();
      }
    } finally {
      if (server != null) {
        server.destroy();
        server.waitFor();
      }
    }
  }

  @Test
  void runs_a_notebook_completes_a_name_and_stops_a_loop() throws Exception {
    runs_all_cells_and_shows_the_figures();
    completes_a_name();
    stops_an_endless_loop_and_keeps_the_variables();
  }

  private void runs_all_cells_and_shows_the_figures() throws Exception {
    assertThat(browser.value("Jupyter.notebook.kernel.name").getAsString()).isEqualTo("taketally");
    browser.value("Jupyter.notebook.clear_all_output()");
    browser.click("#celllink");
    browser.click("#run_all_cells");
    browser.until(
        "Jupyter.notebook.get_cells().every(c => c.cell_type != 'code'"
            + " || c.input_prompt_number > 0) && "
            + IDLE);
    assertThat(browser.value("document.querySelectorAll('.output_error').length").getAsInt())
        .isZero();
    assertThat(
            browser
                .value(
                    "[...document.querySelectorAll('.output_html img')]"
                        + ".filter(each => each.getBoundingClientRect().width > 300).length")
                .getAsInt())
        .isEqualTo(2);
    photograph("figure", "document.querySelector('.output_html:has(img)')");
    photograph("verdict", "document.querySelector('.output_html:not(:has(img))')");
  }

  private void completes_a_name() throws Exception {
    newCell();
    browser.type("var found = records.pro");
    browser.press(Browser.TAB);
    browser.until("document.querySelector('.completions option')");
    photograph("completion", "document.querySelector('.cell.selected')");
    assertThat(
            browser
                .value(
                    "[...document.querySelectorAll('.completions option')].map(o => o.text).join()")
                .getAsString())
        .isEqualTo("problems(),provenance()");
    browser.press(Browser.ENTER);
    browser.until(SELECTED + ".get_text() == 'var found = records.problems()'");
    browser.press(Browser.SHIFT, Browser.ENTER);
    browser.until(LAST + ".input_prompt_number > 0 && " + IDLE);
  }

  private void stops_an_endless_loop_and_keeps_the_variables() throws Exception {
    newCell();
    browser.type("while (true) { }");
    browser.press(Browser.SHIFT, Browser.ENTER);
    browser.until(BUSY);
    Thread.sleep(Duration.ofSeconds(1).toMillis());
    assertThat(browser.value(BUSY).getAsBoolean()).as("still in its loop").isTrue();
    browser.click("#kernellink");
    browser.click("#int_kernel");
    browser.until("document.querySelector('.output_error')");
    browser.until(IDLE);
    photograph("interrupt", "document.querySelector('.output_error')");
    newCell();
    browser.type("verdict.verdict()");
    browser.press(Browser.SHIFT, Browser.ENTER);
    browser.until(LAST + ".output_area.outputs.length == 1 && " + IDLE);
    assertThat(browser.value(LAST + ".output_area.outputs[0].data['text/plain']").getAsString())
        .isEqualTo("no practical difference\n");
    photograph("kept", "document.querySelector('.cell.selected')");
  }

  /** Below the selected one, with the cursor in it. */
  private void newCell() throws Exception {
    browser.click("button[data-jupyter-action='jupyter-notebook:insert-cell-below']");
    browser.click(".cell.selected .CodeMirror-lines");
    browser.until(SELECTED + ".get_text() == '' && " + SELECTED + ".mode == 'edit'");
  }

  private void photograph(String name, String element) throws Exception {
    browser.value(element + ".scrollIntoView({block: 'center'})");
    browser.photograph(PICTURES.resolve(name + ".png"));
  }
}
