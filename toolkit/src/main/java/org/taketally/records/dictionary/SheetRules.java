package org.taketally.records.dictionary;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a dictionary says of one file.
 *
 * @param encoding of the text, UTF-8 where not said
 * @param delimiter between fields, where said
 * @param sheets the sheets of a workbook to be read, all where none is named
 * @param decimal the decimal sign, where said
 * @param dates the pattern of dates, where said
 * @param missing what stands for "not recorded", beside blank
 * @param seasonStart month in which a season begins, 1 to 12, for seasons taken from dates
 * @param columns our column name to what is said of it
 * @param constants our column name to the value all rows have
 * @param ignore headings to leave out
 * @param blankResult what a blank result means, where said
 * @param batches columns that group grafts treated together, beside ours
 * @param shape how the sheet is laid out
 * @param datesBy how days are written by different people, where said
 */
public record SheetRules(
    Charset encoding,
    Optional<Character> delimiter,
    List<String> sheets,
    Optional<Character> decimal,
    Optional<String> dates,
    Set<String> missing,
    int seasonStart,
    Map<String, ColumnEntry> columns,
    Map<String, String> constants,
    Set<String> ignore,
    Optional<BlankResult> blankResult,
    Set<String> batches,
    SheetShape shape,
    Optional<DatesBy> datesBy) {

  /**
   * The same for a file that was written here: in UTF-8, between commas, whatever the sheets are.
   */
  public SheetRules asWrittenHere() {
    return new SheetRules(
        StandardCharsets.UTF_8,
        Optional.of(','),
        sheets,
        decimal,
        dates,
        missing,
        seasonStart,
        columns,
        constants,
        ignore,
        blankResult,
        batches,
        shape.withHeadingsFirst(),
        datesBy);
  }

  /** The line in which the headings stand, from 1. */
  public int headingRow() {
    return shape.headingRow();
  }

  public ColumnEntry column(String name) {
    return columns.getOrDefault(name, ColumnEntry.NONE);
  }

  public Optional<Character> decimal(String name) {
    return column(name).decimal().or(() -> decimal);
  }

  public Optional<String> dates(String name) {
    return column(name).dates().or(() -> dates);
  }

  public Set<String> missing(String name) {
    return column(name).missing().orElse(missing);
  }
}
