package org.taketally.notebook.kernel.engine;

import java.io.IOException;
import java.util.UUID;

/**
 * What cells can say to the notebook. Every name here is imported, so a cell just writes {@code
 * display(table)}.
 */
public final class Notebook {

  private static volatile Engine engine;

  private Notebook() {}

  static void belongsTo(Engine owner) {
    engine = owner;
  }

  private static Engine engine() {
    Engine present = engine;
    if (present == null) {
      throw new IllegalStateException("no notebook is open: this works only in a cell");
    }
    return present;
  }

  /**
   * Shows a value now, while the cell runs on.
   *
   * @param value anything
   * @return a name under which {@link #update} can replace it
   */
  public static String display(Object value) {
    String id = UUID.randomUUID().toString();
    engine().output().display(engine().render(value).named(id));
    return id;
  }

  /**
   * Replaces a value shown before, wherever it stands.
   *
   * @param id what {@link #display} returned
   * @param value the new value
   */
  public static void update(String id, Object value) {
    engine().output().update(engine().render(value).named(id));
  }

  /** Clears this cell's output as soon as new output comes. */
  public static void clear() {
    engine().output().clear(true);
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
    return Drawing.bundle(svg);
  }

  /**
   * Asks the person at the notebook.
   *
   * @param prompt the question
   * @return the line typed
   * @throws IOException if nobody can be asked, e.g. when a notebook is run as a batch
   */
  public static String ask(String prompt) throws IOException {
    return engine().ask(prompt, false);
  }

  /**
   * Asks for something that must not be shown while it is typed.
   *
   * @param prompt the question
   * @return the line typed
   * @throws IOException if nobody can be asked
   */
  public static String askSecretly(String prompt) throws IOException {
    return engine().ask(prompt, true);
  }
}
