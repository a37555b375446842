package org.taketally.notebook.kernel.engine.output;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Takes over {@code System.out}, {@code System.err} and {@code System.in} for as long as an engine
 * lives. What any thread prints goes to the cell that runs, or else the one that ran last.
 */
public final class Console implements AutoCloseable {

  /** Asks the user, from any thread, while a cell runs. */
  public interface Asker {

    String ask(String prompt, boolean secret) throws IOException;
  }

  private final PrintStream originalOut = System.out;
  private final PrintStream originalError = System.err;
  private final InputStream originalIn = System.in;
  private final Output output;
  private final PrintStream out;
  private final PrintStream error;
  private final InputStream in;

  public Console(Output output, Asker asker) {
    this.output = output;
    out = printer("stdout", output);
    error = printer("stderr", output);
    in = new Questions(asker);
    takeOver();
  }

  private void takeOver() {
    System.setOut(out);
    System.setErr(error);
    System.setIn(in);
  }

  /**
   * Sends on what the streams hold back. A cell may have put others in their place and those stay,
   * unless they are nothing, or fail: then all are ours again.
   */
  public void flush() {
    try {
      System.out.flush();
      System.err.flush();
      if (System.in != null) {
        return;
      }
    } catch (RuntimeException | Error unusable) {
      // put right below
    }
    takeOver();
    output.print(
        "stderr", "System.out, err or in was set to what can't be used; they are set back\n");
  }

  private static PrintStream printer(String name, Output output) {
    return new PrintStream(new Printed(name, output), true, StandardCharsets.UTF_8);
  }

  @Override
  public void close() {
    System.setOut(originalOut);
    System.setErr(originalError);
    System.setIn(originalIn);
  }

  /** Bytes to text; a character may come in parts. */
  private static final class Printed extends OutputStream {

    private final String name;
    private final Output output;
    private final CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPLACE)
            .onUnmappableCharacter(CodingErrorAction.REPLACE);
    private byte[] begun = new byte[0];

    Printed(String name, Output output) {
      this.name = name;
      this.output = output;
    }

    @Override
    public void write(int single) {
      write(new byte[] {(byte) single}, 0, 1);
    }

    @Override
    public synchronized void write(byte[] bytes, int offset, int length) {
      ByteBuffer in = ByteBuffer.allocate(begun.length + length);
      in.put(begun).put(bytes, offset, length).flip();
      CharBuffer out = CharBuffer.allocate(in.remaining());
      decoder.decode(in, out, false);
      begun = Arrays.copyOfRange(in.array(), in.position(), in.limit());
      if (out.flip().hasRemaining()) {
        output.print(name, out.toString());
      }
    }
  }

  /** Lines the user types when asked. */
  private static final class Questions extends InputStream {

    private final Asker asker;
    private ByteBuffer line = ByteBuffer.allocate(0);

    Questions(Asker asker) {
      this.asker = asker;
    }

    @Override
    public synchronized int read() throws IOException {
      byte[] single = new byte[1];
      return read(single, 0, 1) < 0 ? -1 : Byte.toUnsignedInt(single[0]);
    }

    @Override
    public synchronized int read(byte[] target, int offset, int length) throws IOException {
      if (length == 0) {
        return 0;
      }
      if (!line.hasRemaining()) {
        String typed = asker.ask("", false) + "\n";
        line = ByteBuffer.wrap(typed.getBytes(StandardCharsets.UTF_8));
      }
      int count = Math.min(length, line.remaining());
      line.get(target, offset, count);
      return count;
    }

    @Override
    public synchronized int available() {
      return line.remaining();
    }
  }
}
