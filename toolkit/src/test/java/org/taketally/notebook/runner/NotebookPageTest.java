package org.taketally.notebook.runner;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Executed notebooks as pages. */
class NotebookPageTest {

  private static final String NOTEBOOK =
      """
      {"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [
       {"cell_type": "markdown", "id": "a", "metadata": {}, "source": "# Does <rootstock> matter?\\n\\n| a | b |\\n|---|---|\\n| 1 | <script>bad()</script> |"},
       {"cell_type": "code", "id": "b", "metadata": {}, "execution_count": 1, "source": "a < b && c", "outputs": [
        {"output_type": "stream", "name": "stdout", "text": ["<printed>\\n"]},
        {"output_type": "execute_result", "execution_count": 1, "metadata": {}, "data": {"text/html": ["<table><tr><td>rich</td></tr></table>"], "text/plain": ["plain & simple"]}},
        {"output_type": "display_data", "metadata": {}, "data": {"image/png": "iVBO\\nRw==", "text/plain": ["pic"]}},
        {"output_type": "error", "ename": "E", "evalue": "v", "traceback": ["\\u001b[1;31mE\\u001b[0m: <v>"]}]},
       {"cell_type": "code", "id": "c", "metadata": {}, "execution_count": null, "source": "", "outputs": []}]}
      """;

  @TempDir private Path folder;

  private String page(boolean plain) throws Exception {
    Path file = Files.writeString(folder.resolve("n.ipynb"), NOTEBOOK);
    return NotebookPage.of(Notebook.read(file), plain);
  }

  @Test
  void shows_texts_code_and_outputs_with_everything_typed_escaped() throws Exception {
    assertThat(page(false))
        .startsWith("<!DOCTYPE html>")
        .contains("<title>Does &lt;rootstock&gt; matter?</title>")
        .contains(
            "<div class=\"count\">[1]</div><pre class=\"code\"><code>a &lt; b &amp;&amp;"
                + " c</code></pre>")
        .contains("<pre>&lt;printed&gt;\n</pre>")
        .contains("<table><tr><td>rich</td></tr></table>")
        .doesNotContain("plain &amp; simple")
        .contains("<img alt=\"pic\" src=\"data:image/png;base64,iVBORw==\"")
        .contains("<b class=\"red\">E</b>: &lt;v&gt;")
        .doesNotContain("http://", "https://", "<link", "src=\"/");
  }

  @Test
  void a_plain_page_has_no_active_content() throws Exception {
    assertThat(page(true))
        .contains("plain &amp; simple", "&lt;script&gt;bad()&lt;/script&gt;")
        .doesNotContain("<script", "rich</td>");
  }

  @Test
  void a_plain_page_loads_nothing_from_elsewhere() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("remote.ipynb"),
            """
            {"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [
             {"cell_type": "markdown", "id": "a", "metadata": {}, "source": "![seen **by**](http://elsewhere/x.png) ![](//elsewhere/y.png) ![b][r] <img src=http://elsewhere/z.png>\n\n[r]: pic.svg"},
             {"cell_type": "code", "id": "b", "metadata": {}, "execution_count": 1, "source": "x", "outputs": [
              {"output_type": "display_data", "metadata": {}, "data": {"text/markdown": "![m](https://elsewhere/m.png)"}}]}]}
            """);
    String page = NotebookPage.of(Notebook.read(file), true);
    assertThat(page)
        .doesNotContain("<img")
        .contains("[picture: seen <strong>by</strong> at http://elsewhere/x.png]")
        .contains("[picture: m at https://elsewhere/m.png]")
        .contains("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'");
    assertThat(NotebookPage.of(Notebook.read(file), false))
        .contains("<img src=\"http://elsewhere/x");
  }
}
