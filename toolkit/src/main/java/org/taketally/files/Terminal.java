package org.taketally.files;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;

/**
 * Lines for a terminal that nothing in the records can steer: control signs and signs that turn the
 * direction of writing are shown as codes, e.g. {@code \}{@code u001B}.
 */
public final class Terminal extends PrintWriter {

  private final Writer raw;

  private Terminal(Writer raw) {
    super(new Neutral(raw), true);
    this.raw = raw;
  }

  /**
   * A terminal.
   *
   * @param out where lines go to
   * @return the same with a filter before it
   */
  public static Terminal on(Writer out) {
    return out instanceof Terminal already ? already : new Terminal(out);
  }

  /**
   * Goes back to the start of the line, so that the next text is written over it.
   *
   * @throws java.io.UncheckedIOException if it can't be written
   */
  public void restartLine() {
    flush();
    try {
      raw.write('\r');
      raw.flush();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * Text that steers nothing.
   *
   * @param text any
   * @return the same with codes in place of control signs; line feeds and tabs stay
   */
  public static String neutral(String text) {
    return ControlSigns.neutral(text);
  }

  /** The filter. */
  private static final class Neutral extends Writer {
    private final Writer out;

    Neutral(Writer out) {
      this.out = out;
    }

    @Override
    public void write(char[] text, int offset, int length) throws IOException {
      out.write(withLineEnds(new String(text, offset, length)));
    }

    /** Where lines end in two signs, the pair stays. */
    private static String withLineEnds(String text) {
      String end = System.lineSeparator();
      return end.equals("\n") ? neutral(text) : neutral(text.replace(end, "\n")).replace("\n", end);
    }

    @Override
    public void flush() throws IOException {
      out.flush();
    }

    @Override
    public void close() throws IOException {
      out.close();
    }
  }
}
