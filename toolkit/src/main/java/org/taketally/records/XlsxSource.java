package org.taketally.records;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;

/** A sheet of a workbook (.xlsx): the first, or the one the dictionary names. */
final class XlsxSource implements RowSource {

  private static final ReadingOptions WITH_FORMATS = new ReadingOptions(true, true);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");

  private final Path path;
  private final Optional<String> sheetName;
  private final List<String> headings;

  XlsxSource(Path path, Optional<String> sheetName) {
    this.path = path;
    this.sheetName = sheetName;
    try (SheetRows rows = new SheetRows(-1)) {
      RawRow first = rows.next();
      if (first == null) {
        throw FileSigns.refuse(
            path, "an empty sheet", "name the sheet with the records: \"sheet\"");
      }
      this.headings = first.headings();
    }
  }

  @Override
  public String name() {
    return path.toString();
  }

  @Override
  public Optional<Path> path() {
    return Optional.of(path);
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public Rows open() {
    SheetRows rows = new SheetRows(headings.size());
    rows.next();
    return rows;
  }

  /** An open workbook. */
  private final class SheetRows implements Rows {

    private final ReadableWorkbook workbook;
    private final Stream<Row> stream;
    private final Iterator<Row> rows;
    private final int width;

    /** Opens the sheet; rows get at least that many fields. */
    SheetRows(int width) {
      this.width = width;
      try {
        workbook = new ReadableWorkbook(path.toFile(), WITH_FORMATS);
        stream = sheet().openStream();
        rows = stream.iterator();
      } catch (IOException | ExcelReaderException e) {
        throw broken(e);
      }
    }

    private Sheet sheet() {
      if (sheetName.isEmpty()) {
        return workbook.getFirstSheet();
      }
      return workbook
          .findSheet(sheetName.get())
          .orElseThrow(
              () ->
                  FileSigns.refuse(
                      path,
                      "no sheet \"" + sheetName.get() + "\"",
                      "choose one of " + workbook.getSheets().map(Sheet::getName).toList()));
    }

    @Override
    public RawRow next() {
      try {
        while (rows.hasNext()) {
          RawRow row = raw(rows.next());
          if (!row.blank()) {
            return row;
          }
        }
        return null;
      } catch (UncheckedIOException | ExcelReaderException e) {
        throw broken(e);
      }
    }

    private RawRow raw(Row row) {
      int count = Math.max(width, row.getCellCount());
      String[] fields = new String[count];
      boolean[] exact = new boolean[count];
      for (int i = 0; i < count; i++) {
        Cell cell = i < row.getCellCount() ? row.getCell(i) : null;
        fields[i] = cell == null ? "" : text(cell);
        exact[i] = cell != null && cell.getType() == CellType.NUMBER;
      }
      int last = count;
      while (last > Math.max(width, 1) && fields[last - 1].isEmpty()) {
        last--;
      }
      return new RawRow(
          row.getRowNum(),
          java.util.Arrays.copyOf(fields, last),
          java.util.Arrays.copyOf(exact, last));
    }

    private RecordsUnreadable broken(Exception e) {
      return FileSigns.refuse(
          path,
          "a workbook that can't be opened (" + e.getMessage() + ")",
          "open it in a spreadsheet and save it as .xlsx or \"CSV UTF-8\" again");
    }

    @Override
    public void close() {
      try {
        stream.close();
        workbook.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private static String text(Cell cell) {
    return switch (cell.getType()) {
      case NUMBER -> isDate(cell) ? date(cell.asDate()) : cell.asNumber().toPlainString();
      case EMPTY -> "";
      default -> cell.getText();
    };
  }

  private static boolean isDate(Cell cell) {
    String format = cell.getDataFormatString();
    if (format == null) {
      return false;
    }
    String bare =
        format.replaceAll("\"[^\"]*\"|\\\\.|\\[[^\\]]*\\]", "").toLowerCase(java.util.Locale.ROOT);
    return bare.contains("y") || (bare.contains("d") && bare.contains("m"));
  }

  private static String date(LocalDateTime when) {
    return when.toLocalTime().equals(LocalTime.MIDNIGHT)
        ? when.toLocalDate().toString()
        : DAY_AND_TIME.format(when);
  }
}
