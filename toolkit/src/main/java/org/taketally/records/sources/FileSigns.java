package org.taketally.records.sources;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HexFormat;
import org.taketally.records.columns.SizeLimits;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Tells from its first bytes what a file is, whatever its name. */
public final class FileSigns {

  private static final int LOOKED_AT = 4096;
  private static final int HEADINGS = 1 << 20;

  /** How the headings of rows set aside end. */
  private static final String SET_ASIDE =
      ",set_aside_extra,set_aside_file,set_aside_line,set_aside_reasons";

  /** What records can be read from. */
  enum Form {
    TEXT,
    WORKBOOK
  }

  private FileSigns() {}

  /** The form of a file that may hold records; throws if it can't. */
  public static Form form(Path path, boolean wideText) {
    byte[] first = first(path);
    String signs = HexFormat.of().formatHex(first, 0, Math.min(8, first.length));
    if (first.length == 0) {
      throw refuse(path, "an empty file", "save the sheet again and check that it has rows");
    }
    if (signs.startsWith("504b0304")) {
      return Form.WORKBOOK;
    }
    if (signs.startsWith("d0cf11e0")) {
      throw refuse(path, "an old workbook (.xls)", "save it as .xlsx or as \"CSV UTF-8\"");
    }
    if (signs.startsWith("50415231")) {
      throw refuse(path, "a Parquet file", "read it with a query; see docs/records.md");
    }
    if (signs.startsWith("1f8b")) {
      throw refuse(path, "a compressed file", "unpack it first");
    }
    if (signs.startsWith("255044462d")) {
      throw refuse(path, "a PDF", "ask for the sheet it was made from");
    }
    if (!wideText && (signs.startsWith("fffe") || signs.startsWith("feff"))) {
      throw refuse(
          path,
          "text in UTF-16",
          "save the sheet as \"CSV UTF-8\", or say \"encoding\": \"UTF-16\" in the dictionary");
    }
    for (byte one : first) {
      if (one == 0 && !wideText) {
        throw refuse(path, "a file that isn't text", "save the sheet as \"CSV UTF-8\" or .xlsx");
      }
    }
    return Form.TEXT;
  }

  private static byte[] first(Path path) {
    if (Files.isDirectory(path)) {
      throw refuse(path, "a folder", "name the files in it, e.g. " + path.resolve("*.csv"));
    }
    requireWhole(path);
    try (InputStream in = Files.newInputStream(path)) {
      return in.readNBytes(LOOKED_AT);
    } catch (IOException e) {
      throw cannotOpen(path, e);
    }
  }

  /** Refuses what isn't kept anywhere: it may never begin or never end, and is looked at twice. */
  private static void requireWhole(Path path) {
    if (Files.exists(path) && !Files.isRegularFile(path)) {
      throw refuse(path, "a pipe or a device", "save what it gives as a file, and name that file");
    }
  }

  /** Whether a text begins with the headings of rows set aside, as written here. */
  static boolean isSetAside(Path path) {
    try (InputStream in = Files.newInputStream(path)) {
      String start = new String(in.readNBytes(HEADINGS), StandardCharsets.UTF_8);
      return start.lines().findFirst().orElse("").endsWith(SET_ASIDE);
    } catch (IOException e) {
      throw cannotOpen(path, e);
    }
  }

  /** Refuses a dictionary or crop profile too large to be one. */
  public static void requireSmall(Path path) {
    try {
      requireWhole(path);
      if (!SizeLimits.isSmallFile(path)) {
        throw refuse(
            path, "%,d bytes".formatted(Files.size(path)), "check that the right file was named");
      }
    } catch (IOException e) {
      throw cannotOpen(path, e);
    }
  }

  static RecordsUnreadable cannotOpen(Path path, IOException cause) {
    if (cause instanceof NoSuchFileException) {
      return refuse(path, "no such file", "check the name and the folder");
    }
    if (cause instanceof AccessDeniedException) {
      return refuse(path, "a file you may not read", "ask its owner for leave to read it");
    }
    return refuse(path, cause.toString(), "check the disk");
  }

  static RecordsUnreadable refuse(Path path, String found, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, path.toString(), 0, "", found, "a CSV or XLSX file", remedy));
  }
}
