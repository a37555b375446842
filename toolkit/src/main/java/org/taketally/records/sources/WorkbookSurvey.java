package org.taketally.records.sources;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.taketally.records.columns.SizeLimits;
import org.taketally.records.problems.RecordsUnreadable;

/**
 * Looks through a workbook before it is read, in little memory: what would unpack without end, pull
 * in other files, or be read as something else than it shows is refused with its cell.
 */
final class WorkbookSurvey {

  private static final int LAST_COLUMN = 16_384;
  private static final int LAST_ROW = 1_048_576;
  private static final int LETTERS = 26;

  /** Most bytes a sign takes in UTF-8. */
  private static final long BYTES_OF_SIGN = 4;

  private final Path path;
  private final XMLInputFactory xml = new InputFactoryImpl();
  private int texts = -1;
  private int styles = -1;
  private boolean datesAsText;

  private WorkbookSurvey(Path path) {
    this.path = path;
    xml.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    xml.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    xml.setProperty(XMLInputFactory.IS_COALESCING, false);
  }

  /** Refuses the workbook in a sentence if it can't be read safely. */
  static WorkbookSurvey require(Path path) {
    WorkbookSurvey survey = new WorkbookSurvey(path);
    survey.look();
    return survey;
  }

  /** Whether it has styles, by which dates and percentages are told from other numbers. */
  boolean hasStyles() {
    return styles >= 0;
  }

  /** Whether some of its dates are texts in ISO 8601. */
  boolean hasDatesAsText() {
    return datesAsText;
  }

  private void look() {
    try (ZipFile zip = new ZipFile(path.toFile())) {
      if (zip.size() > SizeLimits.WORKBOOK_PARTS) {
        throw refused("%,d parts".formatted(zip.size()), "save it in a spreadsheet again");
      }
      texts = count(zip, "xl/sharedStrings.xml", "si", "sst");
      styles = count(zip, "xl/styles.xml", "xf", "cellXfs");
      Enumeration<? extends ZipEntry> entries = zip.entries();
      while (entries.hasMoreElements()) {
        ZipEntry entry = entries.nextElement();
        if (entry.getName().matches("xl/worksheets/[^/]+\\.xml")) {
          cells(zip, entry);
        } else if (entry.getName().matches("(?i).*\\.(xml|rels)")) {
          parts(zip, entry);
        }
      }
    } catch (IOException | XMLStreamException | RuntimeException e) {
      if (e instanceof RecordsUnreadable refused) {
        throw refused;
      }
      throw refused(
          "a workbook that can't be opened (damaged)",
          "open it in a spreadsheet and save it as .xlsx or \"CSV UTF-8\" again");
    }
  }

  private RecordsUnreadable refused(String found, String remedy) {
    return FileSigns.refuse(path, found, remedy);
  }

  private XMLStreamReader open(ZipFile zip, ZipEntry entry) throws IOException, XMLStreamException {
    InputStream in = new CountingStream(new BufferedInputStream(zip.getInputStream(entry)), entry);
    return xml.createXMLStreamReader(in);
  }

  /** How many elements of a name stand right in another; -1 without such a part. */
  private int count(ZipFile zip, String part, String name, String in)
      throws IOException, XMLStreamException {
    ZipEntry entry = zip.getEntry(part);
    if (entry == null) {
      return -1;
    }
    XMLStreamReader reader = open(zip, entry);
    int count = 0;
    boolean inside = false;
    long length = 0;
    while (reader.hasNext()) {
      int event = next(reader);
      if (event == XMLStreamConstants.START_ELEMENT) {
        inside |= reader.getLocalName().equals(in);
        boolean one = inside && reader.getLocalName().equals(name);
        count += one ? 1 : 0;
        length = one ? 0 : length;
      } else if (event == XMLStreamConstants.END_ELEMENT && reader.getLocalName().equals(in)) {
        inside = false;
      } else if (event == XMLStreamConstants.CHARACTERS) {
        length += reader.getTextLength();
        requireLength(length, "one of its texts");
      }
    }
    return count;
  }

  private void parts(ZipFile zip, ZipEntry entry) throws IOException, XMLStreamException {
    XMLStreamReader reader = open(zip, entry);
    while (reader.hasNext()) {
      next(reader);
    }
  }

  private int next(XMLStreamReader reader) throws XMLStreamException {
    int event = reader.next();
    if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
      throw refused(
          "a workbook that defines entities, which no spreadsheet writes",
          "ask who sent it; save it in a spreadsheet again if you trust it");
    }
    return event;
  }

  private void requireLength(long length, String where) {
    if (length > SizeLimits.CELL) {
      throw refused(
          "more than %,d signs in %s".formatted(SizeLimits.CELL, where), "shorten that text");
    }
  }

  /** The cells of a worksheet, each with where it says it stands, its kind and its style. */
  private void cells(ZipFile zip, ZipEntry entry) throws IOException, XMLStreamException {
    XMLStreamReader reader = open(zip, entry);
    String cell = "";
    String kind = "";
    long length = 0;
    StringBuilder value = new StringBuilder();
    boolean inValue = false;
    while (reader.hasNext()) {
      int event = next(reader);
      if (event == XMLStreamConstants.START_ELEMENT) {
        String name = reader.getLocalName();
        inValue = name.equals("v");
        if (name.equals("c")) {
          cell = text(reader.getAttributeValue(null, "r"));
          kind = text(reader.getAttributeValue(null, "t"));
          requirePlace(cell);
          requireStyle(cell, text(reader.getAttributeValue(null, "s")));
          length = 0;
          value.setLength(0);
        } else if (name.equals("row")) {
          requireRow(text(reader.getAttributeValue(null, "r")));
        }
      } else if (event == XMLStreamConstants.CHARACTERS) {
        length += reader.getTextLength();
        requireLength(length, "cell " + cell);
        if (inValue && value.length() < SizeLimits.NUMBER) {
          value.append(reader.getText());
        }
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        inValue = false;
        if (reader.getLocalName().equals("c")) {
          requireValue(cell, kind, value.toString().strip());
        }
      }
    }
  }

  private static String text(String attribute) {
    return attribute == null ? "" : attribute;
  }

  private void requirePlace(String cell) {
    if (!cell.isEmpty() && !(cell.matches("[A-Z]{1,3}[0-9]{1,7}") && isInSheet(cell))) {
      throw refused(
          "a cell that says it stands at " + shortened(cell),
          "open it in a spreadsheet and save it again");
    }
  }

  private static boolean isInSheet(String cell) {
    int column = 0;
    int i = 0;
    for (; Character.isLetter(cell.charAt(i)); i++) {
      column = LETTERS * column + cell.charAt(i) - 'A' + 1;
    }
    int row = Integer.parseInt(cell.substring(i));
    return column <= LAST_COLUMN && row >= 1 && row <= LAST_ROW;
  }

  private void requireRow(String row) {
    boolean there = row.matches("[0-9]{1,7}") && Integer.parseInt(row) <= LAST_ROW;
    if (!row.isEmpty() && (!there || Integer.parseInt(row) < 1)) {
      throw refused(
          "a row that says it is number " + shortened(row),
          "open it in a spreadsheet and save it again");
    }
  }

  private void requireStyle(String cell, String style) {
    boolean there =
        style.isEmpty()
            || (style.matches("[0-9]{1,7}") && Integer.parseInt(style) < Math.max(styles, 1));
    if (!there) {
      throw refused(
          "cell %s in a style the workbook doesn't have, so that a date can't be told from a number"
              .formatted(cell),
          "open it in a spreadsheet and save it again");
    }
  }

  private void requireValue(String cell, String kind, String value) {
    switch (kind) {
      case "s" -> {
        boolean there = value.matches("[0-9]{1,9}") && Integer.parseInt(value) < texts;
        if (!there && !value.isEmpty()) {
          throw refused(
              "cell %s without its text".formatted(cell),
              "open it in a spreadsheet and save it again");
        }
      }
      case "d" -> {
        datesAsText = true;
        if (!value.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}(T[0-9:.]{1,20}Z?)?") && !value.isEmpty()) {
          throw refused(
              "cell %s with a date kept as text (%s), which few programs read"
                  .formatted(cell, shortened(value)),
              "open it in a spreadsheet and save it again");
        }
      }
      case "", "n" -> {
        if (!value.isEmpty() && !isNumber(value)) {
          throw refused(
              "cell %s with %s for a number".formatted(cell, shortened(value)),
              "correct the cell in a spreadsheet and save it again");
        }
      }
      default -> {} // texts in place, yes and no, errors: read as they are
    }
  }

  private static boolean isNumber(String value) {
    return value.length() < SizeLimits.NUMBER
        && value.matches("[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+-]?[0-9]{1,3})?")
        && Double.isFinite(Double.parseDouble(value));
  }

  private static String shortened(String text) {
    return text.length() > 20 ? text.substring(0, 20) + "..." : text;
  }

  /** Stops where a part unpacks to more than any sheet has. */
  private final class CountingStream extends FilterInputStream {
    private final ZipEntry entry;
    private long count;
    private long sinceTag;

    CountingStream(InputStream in, ZipEntry entry) {
      super(in);
      this.entry = entry;
    }

    private int counted(int read) {
      count += Math.max(read, 0);
      if (count > SizeLimits.WORKBOOK_PART || isBomb()) {
        throw refused(
            "a workbook that unpacks to more than it can hold (%s)".formatted(entry.getName()),
            "ask who sent it; save it in a spreadsheet again if you trust it");
      }
      return read;
    }

    /** Sheets so large pack some twenty to one, as rows have numbers; a bomb packs far more. */
    private boolean isBomb() {
      return count > 100_000_000L
          && entry.getCompressedSize() > 0
          && count / entry.getCompressedSize() > 100;
    }

    /** A text is held whole by whoever parses it, so that it must be stopped before. */
    private void requireTags(byte[] buffer, int offset, int read) {
      for (int i = offset; i < offset + read; i++) {
        sinceTag = buffer[i] == '<' ? 0 : sinceTag + 1;
      }
      if (sinceTag > BYTES_OF_SIGN * SizeLimits.CELL) {
        requireLength(sinceTag, entry.getName());
      }
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      int read = counted(super.read(buffer, offset, length));
      requireTags(buffer, offset, read);
      return read;
    }
  }
}
