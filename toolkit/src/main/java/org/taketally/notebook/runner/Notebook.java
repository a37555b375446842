package org.taketally.notebook.runner;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.taketally.files.SafeFile;

/**
 * A notebook document, format 4. What isn't understood is kept as it is; cells without an id get
 * one, as format 4.5 wants.
 *
 * @see <a href="https://nbformat.readthedocs.io/en/stable/format_description.html">The notebook
 *     file format</a>
 */
public final class Notebook {

  private static final int MAJOR = 4;
  private static final int MINOR = 5;

  private final JsonObject json;
  private final List<NotebookCell> cells = new ArrayList<>();

  private Notebook(JsonObject json) {
    this.json = json;
    json.addProperty("nbformat", MAJOR);
    json.addProperty("nbformat_minor", MINOR);
    Set<String> ids = new HashSet<>();
    for (JsonElement cell : json.getAsJsonArray("cells")) {
      JsonObject object = cell.getAsJsonObject();
      giveId(object, cells.size(), ids);
      cells.add(new NotebookCell(object));
    }
  }

  private static void giveId(JsonObject cell, int index, Set<String> taken) {
    String id = NotebookForm.isText(cell.get("id")) ? cell.get("id").getAsString() : "";
    for (int attempt = 0; !id.matches("[a-zA-Z0-9_-]{1,64}") || taken.contains(id); attempt++) {
      String seed = index + " " + attempt + " " + cell.get("source");
      id = UUID.nameUUIDFromBytes(seed.getBytes(StandardCharsets.UTF_8)).toString().substring(0, 8);
    }
    taken.add(id);
    cell.addProperty("id", id);
  }

  /**
   * Reads a notebook.
   *
   * @param file an {@code .ipynb} file
   * @return the notebook
   * @throws IOException if the file can't be read or is no notebook of format 4
   */
  public static Notebook read(Path file) throws IOException {
    try {
      JsonElement json = JsonParser.parseString(Files.readString(file));
      NotebookForm.check(json);
      return new Notebook(json.getAsJsonObject());
    } catch (JsonParseException | NotebookForm.Broken broken) {
      throw new IOException(file + ": not a notebook: " + reason(broken), broken);
    } catch (CharacterCodingException otherText) {
      throw new IOException(file + ": not a notebook: it is no text in UTF-8", otherText);
    }
  }

  /** The place and what was expected there, without the name of what the parser throws. */
  private static String reason(Exception broken) {
    String message = String.valueOf(broken.getMessage());
    return message.lines().findFirst().orElse("").replaceFirst("^([\\w.]+\\.)+\\w+: ", "");
  }

  /**
   * Writes the notebook as Jupyter does: indent 1, sorted names, UTF-8, final newline.
   *
   * @param file to write; its folder must exist
   * @throws IOException if it can't be written
   */
  public void write(Path file) throws IOException {
    SafeFile.write(file, text());
  }

  /**
   * The notebook as Jupyter writes it: indent 1, sorted names, final newline.
   *
   * @return JSON
   */
  public String text() {
    return NotebookJson.text(json);
  }

  /**
   * The cells in order.
   *
   * @return live views of this notebook's cells
   */
  public List<NotebookCell> cells() {
    return List.copyOf(cells);
  }

  /**
   * The cell that holds the notebook's parameters.
   *
   * @return the first code cell tagged {@code parameters}
   */
  public Optional<NotebookCell> parametersCell() {
    return cells.stream().filter(cell -> cell.isCode() && cell.hasTag("parameters")).findFirst();
  }

  /**
   * The language of its code cells.
   *
   * @return e.g. {@code python}; empty if the notebook doesn't say
   */
  public String language() {
    String language = NotebookForm.text(metadata(), "language_info", "name");
    return language.isEmpty() ? NotebookForm.text(metadata(), "kernelspec", "language") : language;
  }

  /** The notebook's own metadata, made if it has none. */
  JsonObject metadata() {
    if (!json.has("metadata")) {
      json.add("metadata", new JsonObject());
    }
    return json.getAsJsonObject("metadata");
  }

  /**
   * The notebook's title.
   *
   * @return the first heading of its first text cell, or empty text
   */
  public String title() {
    return cells.stream()
        .filter(cell -> cell.type().equals("markdown"))
        .flatMap(cell -> cell.source().lines())
        .filter(line -> line.startsWith("#"))
        .map(line -> line.replaceFirst("^#+\\s*", ""))
        .findFirst()
        .orElse("");
  }
}
