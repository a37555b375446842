package org.taketally.records.invented;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;

/** A sheet as text in rows and columns, to be bent out of shape. Line 1 is the header. */
final class TextSheet {

  private final List<List<String>> lines = new ArrayList<>();

  private TextSheet() {}

  static TextSheet parse(String csv) {
    TextSheet sheet = new TextSheet();
    for (CsvRecord line : CsvReader.builder().ofCsvRecord(csv)) {
      sheet.lines.add(new ArrayList<>(line.getFields()));
    }
    return sheet;
  }

  TextSheet drop(String column) {
    int place = place(column);
    lines.forEach(line -> line.remove(place));
    return this;
  }

  TextSheet rename(String column, String name) {
    lines.get(0).set(place(column), name);
    return this;
  }

  TextSheet change(String column, UnaryOperator<String> change) {
    return changeByLine(column, (line, value) -> change.apply(value));
  }

  /** The change is given the 1-based line and the value. */
  TextSheet changeByLine(String column, BiFunction<Integer, String, String> change) {
    int place = place(column);
    for (int i = 1; i < lines.size(); i++) {
      lines.get(i).set(place, change.apply(i + 1, lines.get(i).get(place)));
    }
    return this;
  }

  TextSheet set(int line, String column, String value) {
    lines.get(line - 1).set(place(column), value);
    return this;
  }

  /** Puts another line in the place of one; it may be shorter or longer than others. */
  TextSheet replace(int line, List<String> fields) {
    lines.set(line - 1, new ArrayList<>(fields));
    return this;
  }

  /** Adds a column of blanks at the end. */
  TextSheet add(String column) {
    lines.forEach(line -> line.add(""));
    lines.get(0).set(lines.get(0).size() - 1, column);
    return this;
  }

  /** Adds a line of totals, as people do. */
  TextSheet total(String label, List<String> columns) {
    List<String> last = new ArrayList<>(Collections.nCopies(lines.get(0).size(), ""));
    last.set(0, label);
    for (String column : columns) {
      int place = place(column);
      int sum = lines.stream().skip(1).mapToInt(line -> Integer.parseInt(line.get(place))).sum();
      last.set(place, Integer.toString(sum));
    }
    lines.add(last);
    return this;
  }

  String text(char separator) {
    StringWriter text = new StringWriter();
    CsvWriter csv =
        CsvWriter.builder().fieldSeparator(separator).lineDelimiter(LineDelimiter.LF).build(text);
    lines.forEach(csv::writeRecord);
    return text.toString();
  }

  private int place(String column) {
    int place = lines.get(0).indexOf(column);
    if (place < 0) {
      throw new IllegalArgumentException(
          "no column \"%s\"; there are %s".formatted(column, lines.get(0)));
    }
    return place;
  }
}
