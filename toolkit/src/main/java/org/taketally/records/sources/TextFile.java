package org.taketally.records.sources;

import java.io.BufferedInputStream;
import java.io.FilterReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Opens a text file strictly: a byte that isn't in its encoding is an error, never a "?". */
public final class TextFile {

  private static final String END = "\u0000end of file\u0000";
  private static final int BUFFER = 1 << 16;

  private TextFile() {}

  /**
   * The text without byte order mark, with one more line at its end, {@link #isEnd}. A reader that
   * doesn't see that line has swallowed it into a quotation that never closes.
   */
  static Ended open(Path path, Charset encoding) {
    return new Ended(openPlain(path, encoding));
  }

  /** The text without byte order mark. */
  public static Reader openPlain(Path path, Charset encoding) {
    try {
      InputStream bytes = new BufferedInputStream(Files.newInputStream(path), BUFFER);
      CharsetDecoder decoder =
          encoding
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT);
      return new InputStreamReader(withoutMark(bytes, encoding), decoder);
    } catch (IOException e) {
      throw FileSigns.cannotOpen(path, e);
    }
  }

  /** The encoding a text seems to be in, from its first bytes and whether all of it reads so. */
  static Charset encoding(Path path) {
    try (InputStream bytes = Files.newInputStream(path)) {
      String signs = HexFormat.of().formatHex(bytes.readNBytes(2));
      if (signs.equals("fffe") || signs.equals("feff")) {
        return StandardCharsets.UTF_16;
      }
    } catch (IOException e) {
      throw FileSigns.cannotOpen(path, e);
    }
    try (Reader text = openPlain(path, StandardCharsets.UTF_8)) {
      text.transferTo(Writer.nullWriter());
      return StandardCharsets.UTF_8;
    } catch (CharacterCodingException e) {
      return Charset.forName("windows-1252");
    } catch (IOException e) {
      throw FileSigns.cannotOpen(path, e);
    }
  }

  private static InputStream withoutMark(InputStream bytes, Charset encoding) throws IOException {
    if (encoding.equals(StandardCharsets.UTF_8)) {
      bytes.mark(3);
      byte[] first = bytes.readNBytes(3);
      boolean marked =
          first.length == 3
              && first[0] == (byte) 0xEF
              && first[1] == (byte) 0xBB
              && first[2] == (byte) 0xBF;
      if (!marked) {
        bytes.reset();
      }
    }
    return bytes;
  }

  /** Whether a field holds a NUL, other than those of the line added at the end. */
  static boolean hasNul(String field) {
    return field.indexOf('\u0000') >= 0 && !field.endsWith(END);
  }

  static boolean isEnd(String[] fields) {
    return fields.length == 1 && fields[0].equals(END);
  }

  /** Names the first line that isn't in the encoding. */
  public static RecordsUnreadable wrongEncoding(Path path, Charset encoding) {
    long line = 1;
    String bytes = "bytes";
    try {
      byte[] all = Files.readAllBytes(path);
      CharsetDecoder decoder = encoding.newDecoder();
      ByteBuffer in = ByteBuffer.wrap(all);
      CharBuffer out = CharBuffer.allocate(BUFFER);
      CoderResult result = decoder.decode(in, out, true);
      while (result.isOverflow()) {
        out.clear();
        result = decoder.decode(in, out, true);
      }
      line = 1 + lineBreaks(all, in.position());
      bytes = hex(all, in.position(), result.isError() ? result.length() : 1);
    } catch (IOException | OutOfMemoryError e) {
      line = 0; // the line is a help only; the file is refused either way
    }
    return new RecordsUnreadable(
        new Problem(
            Severity.ERROR,
            path.toString(),
            line,
            "",
            bytes,
            "text in " + encoding.name(),
            "save the sheet as \"CSV UTF-8\", or name its encoding in the dictionary, e.g."
                + " \"encoding\": \"windows-1252\""));
  }

  private static long lineBreaks(byte[] all, int end) {
    long count = 0;
    for (int i = 0; i < end; i++) {
      boolean pair = all[i] == '\n' && i > 0 && all[i - 1] == '\r';
      count += (all[i] == '\n' && !pair) || all[i] == '\r' ? 1 : 0;
    }
    return count;
  }

  private static String hex(byte[] all, int start, int length) {
    StringBuilder text = new StringBuilder(length == 1 ? "byte" : "bytes");
    for (int i = start; i < Math.min(all.length, start + length); i++) {
      text.append(" %02X".formatted(all[i] & 0xFF));
    }
    return text.toString();
  }

  /**
   * A reader that gives one more line after the last. A carriage return right before a quotation
   * mark becomes a line feed: it ends a line just as well, and where it is the last character of a
   * quoted field, the parser would take it and the line end after the mark for one line end.
   */
  static final class Ended extends FilterReader {
    private final String end = "\n" + END;
    private int given = -1;
    private boolean held;
    private boolean nul;

    Ended(Reader text) {
      super(text);
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
      if (length == 0) {
        return 0;
      }
      if (given < 0) {
        int count = text(buffer, offset, length);
        if (count >= 0) {
          return count;
        }
        given = 0;
      }
      int count = Math.min(length, end.length() - given);
      if (count <= 0) {
        return -1;
      }
      end.getChars(given, given + count, buffer, offset);
      given += count;
      return count;
    }

    /** Whether a NUL was among the letters given so far, before the line added at the end. */
    boolean sawNul() {
      return nul;
    }

    /** The text itself; a carriage return at the end of the buffer waits for what follows. */
    private int text(char[] buffer, int offset, int length) throws IOException {
      int start = held ? 1 : 0;
      if (held && length == 1) {
        buffer[offset] = '\r';
        held = false;
        return 1;
      }
      int count = super.read(buffer, offset + start, length - start);
      if (count < 0 && !held) {
        return -1;
      }
      if (held) {
        buffer[offset] = '\r';
        held = false;
      }
      int all = start + Math.max(count, 0);
      nul |= buffer[offset] == '\u0000';
      for (int i = offset + 1; i < offset + all; i++) {
        if (buffer[i] <= '"') { // nearly all letters are beyond, and need one look only
          nul |= buffer[i] == '\u0000';
          if (buffer[i] == '"' && buffer[i - 1] == '\r') {
            buffer[i - 1] = '\n';
          }
        }
      }
      if (count > 0 && buffer[offset + all - 1] == '\r' && all > 1) {
        held = true;
        all--;
      }
      return all;
    }

    @Override
    public int read() throws IOException {
      char[] one = new char[1];
      return read(one, 0, 1) < 0 ? -1 : one[0];
    }
  }
}
