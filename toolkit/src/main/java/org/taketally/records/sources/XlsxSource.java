package org.taketally.records.sources;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.dictionary.SheetName;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.RecordsUnreadable;

/** A worksheet of a workbook (.xlsx). */
public final class XlsxSource implements RowSource {

  private static final ReadingOptions WITH_FORMATS = new ReadingOptions(true, true);

  /** For a workbook without styles, none of whose numbers can be a date or a percentage. */
  private static final ReadingOptions PLAIN = new ReadingOptions(false, true);

  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");

  private final Workbook file;
  private final Path path;
  private final String sheetName;
  private final boolean alone;
  private final boolean asked;
  private final SheetRules rules;
  private final ToIntFunction<List<String>> known;
  private final List<String> headings;

  private XlsxSource(
      Workbook file,
      SheetRules rules,
      String sheetName,
      boolean alone,
      ToIntFunction<List<String>> known) {
    this.file = file;
    this.path = file.path();
    this.rules = rules;
    this.known = known;
    this.sheetName = sheetName;
    this.alone = alone;
    this.asked = !rules.sheets().isEmpty();
    try (SheetRows rows = new SheetRows(-1)) {
      RawRow first = rows.from(rules.headingRow());
      this.headings = first == null ? List.of() : first.headings();
    }
  }

  /**
   * The worksheets to read: those named, or all that aren't hidden and have something in them.
   *
   * @param rules of the dictionary for the name of a file or worksheet
   * @param known how many headings of a list the dictionary or we know
   */
  static List<RowSource> sheets(
      Path path, Function<String, SheetRules> rules, ToIntFunction<List<String>> known) {
    Workbook file = Workbook.of(path);
    List<String> named = rules.apply(path.toString()).sheets();
    List<Sheet> all;
    try (ReadableWorkbook workbook = file.open()) {
      all = workbook.getSheets().toList();
    } catch (IOException | RuntimeException e) {
      throw broken(path, e);
    }
    List<String> names = all.stream().map(Sheet::getName).toList();
    for (String name : named) {
      if (!names.contains(name)) {
        String like =
            NameLikeness.nearest(name, names)
                .map(near -> "; did you mean " + near + "?")
                .orElse("");
        throw FileSigns.refuse(path, "no sheet \"" + name + "\"", "choose one of " + names + like);
      }
    }
    List<String> wanted =
        !named.isEmpty()
            ? named
            : all.stream()
                .filter(sheet -> sheet.getVisibility() == SheetVisibility.VISIBLE)
                .map(Sheet::getName)
                .toList();
    List<XlsxSource> filled =
        wanted.stream()
            .map(
                name ->
                    new XlsxSource(
                        file,
                        rules.apply(SheetName.of(path, name)),
                        name,
                        wanted.size() == 1,
                        known))
            .filter(source -> !source.headings().isEmpty())
            .toList();
    if (filled.isEmpty()) {
      throw FileSigns.refuse(path, "an empty sheet", "name the sheet with the records: \"sheet\"");
    }
    return filled.size() == 1
        ? List.of(new XlsxSource(file, filled.get(0).rules, filled.get(0).sheetName, true, known))
        : List.copyOf(filled);
  }

  /**
   * The worksheets of a workbook that aren't read, because others were named or they are hidden.
   */
  public static List<String> notRead(Path path, List<String> read) {
    try (ReadableWorkbook workbook = Workbook.of(path).open()) {
      List<String> left = new ArrayList<>();
      for (Sheet sheet : workbook.getSheets().toList()) {
        if (!read.contains(sheet.getName()) && hasRows(sheet)) {
          left.add(sheet.getName());
        }
      }
      return left;
    } catch (IOException | RuntimeException e) {
      throw broken(path, e);
    }
  }

  private static boolean hasRows(Sheet sheet) throws IOException {
    try (Stream<Row> rows = sheet.openStream()) {
      return rows.anyMatch(
          row -> row.stream().anyMatch(cell -> cell != null && !cell.getText().isBlank()));
    }
  }

  /** A workbook that can be read, as it is or as a copy of it. */
  private record Workbook(Path path, Path readable, ReadingOptions options) {

    static Workbook of(Path path) {
      WorkbookSurvey survey = WorkbookSurvey.require(path);
      ReadingOptions options = survey.hasStyles() ? WITH_FORMATS : PLAIN;
      try {
        return new Workbook(path, survey.hasDatesAsText() ? DatesAsText.copy(path) : path, options);
      } catch (IOException e) {
        throw broken(path, e);
      }
    }

    ReadableWorkbook open() throws IOException {
      return new ReadableWorkbook(readable.toFile(), options);
    }
  }

  private static RecordsUnreadable broken(Path path, Exception e) {
    return FileSigns.refuse(
        path,
        "a workbook that can't be read (" + reason(e) + ")",
        "open it in a spreadsheet and save it as .xlsx or \"CSV UTF-8\" again");
  }

  private static String reason(Exception e) {
    boolean told = e instanceof ExcelReaderException && e.getMessage() != null;
    return told
        ? e.getMessage().lines().findFirst().orElse("").replaceFirst("^([\\w.]+\\.)+\\w+: ", "")
        : "damaged";
  }

  @Override
  public Optional<String> sheet() {
    return Optional.of(sheetName);
  }

  @Override
  public boolean mayBeLeftOut() {
    return !alone && !asked;
  }

  @Override
  public String name() {
    return alone ? path.toString() : SheetName.of(path, sheetName);
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
    rows.from(rules.headingRow());
    return rows;
  }

  @Override
  public long likelyHeadingRow() {
    try (SheetRows rows = new SheetRows(-1)) {
      long line = HeadingSearch.line(rows, known);
      return line > 1 ? line : 0;
    }
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
        workbook = file.open();
        stream = sheet().openStream();
        rows = stream.iterator();
      } catch (IOException | RuntimeException e) {
        throw broken(path, e);
      }
    }

    private Sheet sheet() {
      return workbook.findSheet(sheetName).orElseThrow();
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
      } catch (RuntimeException e) {
        throw broken(path, e);
      }
    }

    /** The first row with that number or a higher one; null if there is none. */
    RawRow from(long line) {
      RawRow row = next();
      while (row != null && row.line() < line) {
        row = next();
      }
      return row;
    }

    private RawRow raw(Row row) {
      int count = Math.max(width, row.getCellCount());
      String[] fields = new String[count];
      boolean[] exact = new boolean[count];
      for (int i = 0; i < count; i++) {
        Cell cell = i < row.getCellCount() ? row.getCell(i) : null;
        fields[i] = cell == null ? "" : text(cell);
        exact[i] = cell != null && cell.getType() == CellType.NUMBER && !fields[i].endsWith("%");
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
      case NUMBER -> number(cell);
      case EMPTY -> "";
      default -> cell.getText();
    };
  }

  private static String number(Cell cell) {
    if (isDate(cell)) {
      return date(cell.asDate());
    }
    return isPercent(cell)
        ? cell.asNumber().movePointRight(2).stripTrailingZeros().toPlainString() + "%"
        : cell.asNumber().toPlainString();
  }

  /** Whether the sheet shows it as a percentage, so that 1 stands for 100 %. */
  private static boolean isPercent(Cell cell) {
    String format = cell.getDataFormatString();
    return format != null && format.contains("%");
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
