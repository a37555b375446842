package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.notebook.display.Displays;
import org.taketally.notebook.jupyter.Jupyter.Ran;
import org.taketally.notebook.runner.Notebook;
import org.taketally.notebook.runner.NotebookPage;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.Table;

/** What is seen of saved notebooks once they are exported: figures, and sentences uncut. */
@Timeout(180)
class ExportedPageIT {

  private static final Path NBCONVERT = Path.of("/usr/bin/jupyter-nbconvert");

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"9-your-own-sheet.ipynb", "10-a-trial-in-blocks.ipynb"})
  void every_figure_is_there_as_png_with_marks(String name) throws Exception {
    List<String> pictures = pictures(Jupyter.ROOT.resolve("notebooks").resolve(name));
    assertThat(pictures).isNotEmpty();
    for (String picture : pictures) {
      var image = ImageIO.read(new ByteArrayInputStream(Base64.getMimeDecoder().decode(picture)));
      assertThat(image.getWidth()).isGreaterThan(300);
      long colours =
          java.util.stream.IntStream.range(0, image.getWidth() * image.getHeight())
              .map(i -> image.getRGB(i % image.getWidth(), i / image.getWidth()))
              .distinct()
              .count();
      assertThat(colours).as("colours of marks and lettering").isGreaterThan(20);
    }
  }

  private static List<String> pictures(Path notebook) throws Exception {
    List<String> pictures = new ArrayList<>();
    JsonObject all = JsonParser.parseString(Files.readString(notebook)).getAsJsonObject();
    for (JsonElement cell : all.getAsJsonArray("cells")) {
      if (cell.getAsJsonObject().has("outputs")) {
        for (JsonElement output : cell.getAsJsonObject().getAsJsonArray("outputs")) {
          JsonObject forms = output.getAsJsonObject().getAsJsonObject("data");
          if (forms != null && forms.has("image/svg+xml")) {
            assertThat(forms.keySet()).contains("image/png", "text/html");
            pictures.add(forms.get("image/png").getAsString());
          }
        }
      }
    }
    return pictures;
  }

  @Test
  void an_exported_page_shows_its_figures() throws Exception {
    Path notebook = Jupyter.ROOT.resolve("notebooks/9-your-own-sheet.ipynb");
    int figures = pictures(notebook).size();
    Browser browser = exported(notebook);
    try {
      String drawn =
          "[...document.querySelectorAll('img')].filter(each => each.complete"
              + " && each.naturalWidth > 300 && each.getBoundingClientRect().width > 300).length";
      browser.until(drawn + " >= " + figures);
      browser.photograph(Jupyter.TARGET.resolve("browser/exported.png"));
    } finally {
      browser.quit();
    }
  }

  /** A wide table must not make the page as wide as itself, and the sentences with it. */
  @Test
  void sentences_beside_a_wide_table_are_not_cut() throws Exception {
    Table wide = Table.create("wide");
    for (int i = 0; i < 40; i++) {
      wide.addColumns(DoubleColumn.create("a column of a long name " + i, 0.5));
    }
    String sentence = "<p class='tried'>" + "Takes are averaged over the mix. ".repeat(20) + "</p>";
    String html =
        Displays.html(wide).orElseThrow().replace("</table></div>", "</table></div>" + sentence);
    JsonObject forms = new JsonObject();
    forms.addProperty("text/html", html);
    Path notebook = oneCell(forms);
    Browser browser = exported(notebook);
    try {
      browser.until("document.querySelector('.tried')");
      String right = "document.querySelector('.tried').getBoundingClientRect().right";
      assertThat(browser.value(right + " <= innerWidth").getAsBoolean())
          .as("right end at %s", browser.value(right))
          .isTrue();
    } finally {
      browser.quit();
    }
  }

  /** Printed, the page of a notebook that was run shows every row and what is folded, uncut. */
  @Test
  void a_printed_page_of_a_run_is_whole() throws Exception {
    Jupyter.require("a browser", Browser.CHROMIUM, Browser.DRIVER);
    Table wide = Table.create("wide");
    for (int i = 0; i < 9; i++) {
      wide.addColumns(DoubleColumn.create("a column of a long name " + i, 0.5, 0.25));
    }
    JsonObject forms = new JsonObject();
    forms.addProperty(
        "text/html",
        Displays.html(wide).orElseThrow()
            + "<details><summary>more</summary><p class='folded'>folded</p></details>");
    Notebook notebook = Notebook.read(oneCell(forms));
    Path page = Files.writeString(folder.resolve("run.html"), NotebookPage.of(notebook, false));
    Browser browser = Browser.open(folder);
    try {
      browser.go(page.toUri().toString());
      String folded = "document.querySelector('.folded').checkVisibility()";
      assertThat(browser.value(folded).getAsBoolean()).as("folded on a screen").isFalse();
      JsonObject paper = new JsonObject();
      paper.addProperty("width", 718); // A4 less its margins
      paper.addProperty("height", 1_040);
      paper.addProperty("deviceScaleFactor", 1);
      paper.addProperty("mobile", false);
      browser.command("Emulation.setDeviceMetricsOverride", paper);
      JsonObject print = new JsonObject();
      print.addProperty("media", "print");
      browser.command("Emulation.setEmulatedMedia", print);
      browser.until(folded);
      String cut =
          "[...document.querySelectorAll('th, td')]"
              + ".filter(each => each.getBoundingClientRect().right > 719).length";
      assertThat(browser.value("document.querySelectorAll('td').length").getAsInt())
          .isGreaterThanOrEqualTo(18);
      assertThat(browser.value(cut).getAsInt()).as("cells beyond the sheet").isZero();
    } finally {
      browser.quit();
    }
  }

  private Path oneCell(JsonObject forms) throws Exception {
    forms.addProperty("text/plain", "a table");
    return Files.writeString(
        folder.resolve("wide.ipynb"),
        """
        {"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [
         {"cell_type": "code", "id": "a", "metadata": {}, "execution_count": 1, "source": "wide",
          "outputs": [{"output_type": "execute_result", "execution_count": 1, "metadata": {}, "data": %s}]}]}
        """
            .formatted(forms));
  }

  private Browser exported(Path notebook) throws Exception {
    Jupyter.require("Jupyter's nbconvert", NBCONVERT);
    Jupyter.require("a browser", Browser.CHROMIUM, Browser.DRIVER);
    Ran ran =
        Jupyter.run(
            folder,
            NBCONVERT.toString(),
            "--to",
            "html",
            "--output-dir",
            folder.toString(),
            notebook.toString());
    assertThat(ran.status()).as(ran.output()).isZero();
    String page = notebook.getFileName().toString().replace(".ipynb", ".html");
    Browser browser = Browser.open(folder);
    browser.go(folder.resolve(page).toUri().toString());
    return browser;
  }
}
