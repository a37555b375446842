package org.taketally.publish;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.InflaterInputStream;

/** How far down the text of each printed page reaches, read from the browser's PDF. */
final class PrintedPages {

  /** Of the page's style: 1.6 cm, in points. */
  private static final double MARGIN = 1.6 / 2.54 * 72;

  private static final Pattern CONTENTS =
      Pattern.compile("/Type /Page\\b.*?/Contents (\\d+) 0 R", Pattern.DOTALL);
  private static final Pattern MOVES =
      Pattern.compile(
          "(?m)^(?:(?<save>q)|(?<restore>Q)"
              + "|\\S+ \\S+ \\S+ (?<scale>\\S+) \\S+ (?<shift>\\S+) (?<what>cm|Tm))$");

  private PrintedPages() {}

  /**
   * Which part of each page between its margins is blank below its last line of text.
   *
   * @param pdf as the browser prints it: heights scaled and shifted only, streams deflated
   * @return one share a page
   */
  static List<Double> blank(byte[] pdf) {
    String text = new String(pdf, StandardCharsets.ISO_8859_1);
    List<Double> shares = new ArrayList<>();
    Matcher pages = CONTENTS.matcher(text);
    while (pages.find()) {
      shares.add(blankBelow(stream(text, pages.group(1))));
    }
    return shares;
  }

  private static String stream(String pdf, String number) {
    int at = pdf.indexOf("\n" + number + " 0 obj");
    int start = pdf.indexOf("stream\n", at) + "stream\n".length();
    byte[] deflated =
        pdf.substring(start, pdf.indexOf("endstream", start)).getBytes(StandardCharsets.ISO_8859_1);
    try (InflaterInputStream in = new InflaterInputStream(new ByteArrayInputStream(deflated))) {
      return new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The first move puts zero at the top of the sheet, so its shift is the sheet's height. */
  private static double blankBelow(String drawn) {
    double scale = 1;
    double shift = 0;
    double height = 0;
    double lowest = Double.POSITIVE_INFINITY;
    Deque<double[]> saved = new ArrayDeque<>();
    Matcher move = MOVES.matcher(drawn);
    while (move.find()) {
      if (move.group("save") != null) {
        saved.push(new double[] {scale, shift});
      } else if (move.group("restore") != null) {
        double[] before = saved.pop();
        scale = before[0];
        shift = before[1];
      } else if (move.group("what").equals("Tm")) {
        lowest = Math.min(lowest, scale * Double.parseDouble(move.group("shift")) + shift);
      } else {
        shift += scale * Double.parseDouble(move.group("shift"));
        scale *= Double.parseDouble(move.group("scale"));
        height = height == 0 ? shift : height;
      }
    }
    double room = height - 2 * MARGIN;
    return Math.min(1, Math.max(0, lowest - MARGIN) / room);
  }
}
