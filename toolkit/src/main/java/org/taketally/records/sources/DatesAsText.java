package org.taketally.records.sources;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.taketally.files.ScratchFile;

/**
 * A copy of a workbook whose cells of dates in ISO 8601 ({@code t="d"}, as strict Office Open XML
 * has them) are cells of text, which every reader of workbooks knows. Deleted when Java ends.
 */
final class DatesAsText {

  private static final byte[] DATE = " t=\"d\"".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] TEXT = " t=\"str\"".getBytes(StandardCharsets.US_ASCII);

  private DatesAsText() {}

  static Path copy(Path workbook) throws IOException {
    return ScratchFile.of("taketally-workbook", ".xlsx", out -> copy(workbook, out));
  }

  private static void copy(Path workbook, OutputStream to) throws IOException {
    try (ZipFile zip = new ZipFile(workbook.toFile());
        ZipOutputStream out = new ZipOutputStream(to)) {
      Enumeration<? extends ZipEntry> entries = zip.entries();
      while (entries.hasMoreElements()) {
        ZipEntry entry = entries.nextElement();
        out.putNextEntry(new ZipEntry(entry.getName()));
        try (InputStream in = new BufferedInputStream(zip.getInputStream(entry))) {
          if (entry.getName().matches("xl/worksheets/[^/]+\\.xml")) {
            turn(in, out);
          } else {
            in.transferTo(out);
          }
        }
        out.closeEntry();
      }
    }
  }

  /** Changes the attribute within tags only. */
  private static void turn(InputStream in, OutputStream out) throws IOException {
    boolean tag = false;
    int matched = 0;
    for (int sign = in.read(); sign >= 0; sign = in.read()) {
      if (tag && sign == DATE[matched]) {
        matched++;
        if (matched == DATE.length) {
          out.write(TEXT);
          matched = 0;
        }
        continue;
      }
      out.write(DATE, 0, matched);
      matched = 0;
      if (tag && sign == DATE[0]) {
        matched = 1;
        continue;
      }
      tag = sign == '<' || (tag && sign != '>');
      out.write(sign);
    }
    out.write(DATE, 0, matched);
  }
}
