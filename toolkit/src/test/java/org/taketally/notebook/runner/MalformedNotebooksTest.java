package org.taketally.notebook.runner;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.notebook.kernel.KernelSetup;
import org.taketally.notebook.kernel.engine.output.CellResult;

/** Files that are no notebooks, or nearly: a result or a sentence, never a fault of ours. */
class MalformedNotebooksTest {

  private static final String WHOLE =
      """
      {"nbformat": 4, "nbformat_minor": 5,
       "metadata": {"kernelspec": {"name": "x", "language": "java"}, "language_info": {"name": "java"}},
       "cells": [
       {"cell_type": "markdown", "id": "a", "metadata": {}, "source": ["# Does it", " matter?"]},
       {"cell_type": "code", "id": "b", "metadata": {"tags": ["parameters", "skip-execution"]},
        "execution_count": 1, "source": "int a = 1;", "outputs": [
        {"output_type": "stream", "name": "stdout", "text": ["printed"]},
        {"output_type": "execute_result", "execution_count": 1, "metadata": {},
         "data": {"application/json": {"a": 1}, "text/plain": ["plain"]}},
        {"output_type": "display_data", "metadata": {}, "data": {"image/png": "iVBO"}},
        {"output_type": "error", "ename": "E", "evalue": "v", "traceback": ["E"]}]},
       {"cell_type": "code", "id": "c", "metadata": {"tags": []}, "source": "2", "outputs": []}]}
      """;

  private static final List<String> OTHERS =
      List.of(
          "null",
          "1",
          "1e99999999999",
          "\"x\"",
          "true",
          "[]",
          "{}",
          "[null]",
          "[[1]]",
          "{\"a\": [{}]}");

  @TempDir private Path folder;

  /** Runs no code, but writes all that a run writes. */
  private static final class NoEngine implements CellEngine {

    @Override
    public CellResult run(int count, String code) {
      return new CellResult(Optional.empty(), Optional.empty());
    }

    @Override
    public void interrupt() {}

    @Override
    public JsonObject languageInfo() {
      return KernelSetup.languageInfo();
    }

    @Override
    public void close() {}
  }

  private void use(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("n.ipynb"), text);
    Notebook notebook = Notebook.read(file);
    notebook.cells().forEach(NotebookCell::outputTexts);
    NotebookPage.of(notebook, true);
    NotebookPage.of(notebook, false);
    RunOptions options = RunOptions.usual().set("a", "7").timing(true);
    new NotebookRunner(outputs -> new NoEngine(), options, (done, all) -> {}).run(notebook);
    NotebookPage.of(notebook, false);
    notebook.write(folder.resolve("out.ipynb"));
  }

  /** Every part of a notebook is replaced by every other kind of thing, and left out. */
  @Test
  void any_part_may_be_anything() throws IOException {
    use(WHOLE);
    int parts = parts(JsonParser.parseString(WHOLE)).size();
    assertThat(parts).isGreaterThan(50);
    int refused = 0;
    for (int part = 0; part < parts; part++) {
      for (String other : OTHERS) {
        JsonElement json = JsonParser.parseString(WHOLE);
        parts(json).get(part).run(JsonParser.parseString(other));
        try {
          use(json.toString());
        } catch (IOException | IllegalArgumentException sentence) {
          assertThat(sentence.getMessage()).isNotBlank();
          refused++;
        }
      }
    }
    assertThat(refused).isBetween(parts, parts * OTHERS.size());
  }

  /** Puts another value in the place of one. */
  private interface Replacement {
    void run(JsonElement other);
  }

  private static List<Replacement> parts(JsonElement json) {
    List<Replacement> parts = new ArrayList<>();
    if (json.isJsonObject()) {
      JsonObject object = json.getAsJsonObject();
      for (Map.Entry<String, JsonElement> each : object.entrySet()) {
        parts.add(other -> object.add(each.getKey(), other));
        parts.addAll(parts(each.getValue()));
      }
    } else if (json.isJsonArray()) {
      JsonArray array = json.getAsJsonArray();
      for (int i = 0; i < array.size(); i++) {
        int place = i;
        parts.add(other -> array.set(place, other));
        parts.addAll(parts(array.get(i)));
      }
    }
    return parts;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"nbformat\": 3, \"cells\": []} | nbformat: found 3, expected notebook format 4",
        "{\"nbformat\": 4, \"cells\": 5} | cells: found 5, expected a list in brackets",
        "{\"nbformat\": 4, \"cells\": [1]} | cell 1: found 1, expected an object in braces",
        "{\"nbformat\": 4, \"cells\": [{}]} | cell 1, cell_type: found nothing, expected text",
        "[] | the file: found a list in brackets, expected an object in braces"
      })
  void says_where_and_what_was_expected(String text, String sentence) {
    assertThatThrownBy(() -> use(text))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("n.ipynb: not a notebook: ")
        .hasMessageContaining(sentence);
  }

  @Test
  void brackets_without_end_are_refused() {
    String deep = "[".repeat(100_000) + "]".repeat(100_000);
    assertThatThrownBy(
            () -> use("{\"nbformat\": 4, \"cells\": [], \"metadata\": {\"x\": " + deep + "}}"))
        .isInstanceOf(IOException.class);
  }

  @Test
  void bytes_that_are_no_text_are_refused() throws IOException {
    Path file = Files.write(folder.resolve("b.ipynb"), new byte[] {'{', (byte) 0xff, '}'});
    assertThatThrownBy(() -> Notebook.read(file)).hasMessageContaining("no text in UTF-8");
  }

  @Test
  void a_notebook_of_another_language_is_named_so() {
    String python = WHOLE.replace("\"language\": \"java\"", "\"language\": \"python\"");
    assertThatThrownBy(() -> use(python.replace("\"name\": \"java\"", "\"name\": \"python\"")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("written in \"python\", expected java");
  }
}
