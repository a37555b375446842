package org.taketally.notebook.kernel.engine;

import java.io.IOException;
import java.util.UUID;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.Drawing;
import org.taketally.notebook.kernel.engine.output.Output;

/**
 * What cells can say to the notebook. Every name here is imported, so a cell just writes {@code
 * display(table)}.
 */
public final class CellFunctions {

  /** Where values are shown and questions asked. */
  interface Stage {

    Output output();

    Bundle render(Object value, String... mediaTypes);

    String ask(String prompt, boolean secret) throws IOException;
  }

  private static volatile Stage stage;
  private static volatile String lastId = "";

  private CellFunctions() {}

  static void belongTo(Stage present) {
    stage = present;
  }

  /** Whether a value is the name that {@link #display} has just returned: nothing to be shown. */
  @SuppressWarnings({"ReferenceEquality", "StringEquality"}) // that very text, not one like it
  static boolean isNameOfDisplay(Object value) {
    return value == lastId;
  }

  private static Stage stage() {
    Stage present = stage;
    if (present == null) {
      throw new IllegalStateException("no notebook is open: this works only in a cell");
    }
    return present;
  }

  /**
   * Shows a value now, while the cell runs on.
   *
   * @param value anything
   * @param mediaTypes forms to show it in, e.g. {@code text/html} or {@code image/svg+xml}; none
   *     for those that suit it
   * @return a name under which {@link #updateDisplay} can replace it
   * @throws IllegalArgumentException if the value has none of these forms
   */
  public static String display(Object value, String... mediaTypes) {
    String id = UUID.randomUUID().toString();
    stage().output().display(stage().render(value, mediaTypes).named(id));
    lastId = id;
    return id;
  }

  /**
   * A value in a form of choice, to be the last value of a cell or given to {@link #display}.
   *
   * @param value anything; text is taken as already written in that form
   * @param mediaTypes e.g. {@code text/html}, {@code text/markdown}, {@code image/svg+xml}
   * @return a value to display
   * @throws IllegalArgumentException if the value has none of these forms
   */
  public static Bundle render(Object value, String... mediaTypes) {
    return stage().render(value, mediaTypes);
  }

  /**
   * Replaces a value shown before, wherever it stands.
   *
   * @param id what {@link #display} returned
   * @param value the new value
   */
  public static void updateDisplay(String id, Object value) {
    stage().output().update(stage().render(value).named(id));
  }

  /**
   * The same as {@link #updateDisplay}.
   *
   * @param id what {@link #display} returned
   * @param value the new value
   */
  public static void update(String id, Object value) {
    updateDisplay(id, value);
  }

  /** Clears this cell's output as soon as new output comes. */
  public static void clear() {
    stage().output().clear(true);
  }

  /**
   * Text with HTML markup, to be shown as such. Whoever writes it must escape what users typed.
   *
   * @param markup HTML
   * @return a value to display
   */
  public static Bundle html(String markup) {
    return Bundle.text("text/html", markup).withPlainText(markup.replaceAll("<[^>]*>", ""));
  }

  /**
   * Text with Markdown markup.
   *
   * @param markup Markdown
   * @return a value to display
   */
  public static Bundle markdown(String markup) {
    return Bundle.text("text/markdown", markup).withPlainText(markup);
  }

  /**
   * A drawing.
   *
   * @param svg SVG text
   * @return a value to display
   */
  public static Bundle svg(String svg) {
    Stage present = stage;
    return present != null && Drawing.isSvg(svg) ? present.render(svg) : Drawing.bundle(svg);
  }

  /**
   * Asks the person at the notebook.
   *
   * @param prompt the question
   * @return the line typed
   * @throws IOException if nobody can be asked, e.g. when a notebook is run as a batch
   */
  public static String ask(String prompt) throws IOException {
    return stage().ask(prompt, false);
  }

  /**
   * Asks for something that must not be shown while it is typed.
   *
   * @param prompt the question
   * @return the line typed
   * @throws IOException if nobody can be asked
   */
  public static String askSecretly(String prompt) throws IOException {
    return stage().ask(prompt, true);
  }
}
