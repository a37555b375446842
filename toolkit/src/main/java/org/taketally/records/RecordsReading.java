package org.taketally.records;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.taketally.records.checks.RowRules;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.Places;
import org.taketally.records.rows.FrameBuilder;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.SetAside;
import org.taketally.records.rows.SetAsideSink;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SourceFiles;
import org.taketally.records.sources.TableSource;
import org.taketally.terms.CropProfile;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * How records are read.
 *
 * @param dictionary what is said of the sheets
 * @param crop what is usual for the crop; null if not said
 * @param today the day no record can be later than
 */
record RecordsReading(SheetDictionary dictionary, CropProfile crop, LocalDate today) {

  /** Sheets in our own columns, without a crop profile. */
  static RecordsReading defaults() {
    return new RecordsReading(SheetDictionary.none(), null, LocalDate.now(ZoneId.systemDefault()));
  }

  /**
   * What comes of reading.
   *
   * @param frame usable rows
   * @param check what reading brought to light
   * @param setAside the other rows
   */
  record Result(Table frame, RecordsCheck check, SetAside setAside) {}

  Result read(List<RowSource> sources) {
    FrameBuilder builder = new FrameBuilder();
    SetAsideSink.Memory setAside = new SetAsideSink.Memory();
    RecordsCheck check = pass(sources, name -> true).run(builder, setAside);
    return new Result(builder.table(), check, setAside.all());
  }

  /** Files, and all CSV and XLSX files of folders. */
  Result read(Path... paths) {
    List<RowSource> sources = new ArrayList<>();
    for (Path path : paths) {
      sources.addAll(
          Files.isDirectory(path)
              ? SourceFiles.inFolder(path, dictionary)
              : SourceFiles.open(List.of(path), dictionary));
    }
    if (sources.isEmpty()) {
      throw new IllegalArgumentException("name at least one file or folder of records");
    }
    return read(sources);
  }

  /** A table, whose text columns hold names, also where all of them look like numbers. */
  Result read(Table table) {
    SheetDictionary named = dictionary;
    for (Column<?> column : table.columns()) {
      if (column instanceof StringColumn && !KnownColumns.isKnown(column.name())) {
        named = named.holdsNames(column.name());
      }
    }
    return new RecordsReading(named, crop, today).read(List.of(new TableSource(table)));
  }

  RecordsPass pass(List<RowSource> sources, Predicate<String> wanted) {
    RecordsLayout layout = RecordsLayout.ofRecords(wanted);
    Places places = new Places();
    RowRules rules = new RowRules(new RowRules.Options(crop, today), layout, places);
    return new RecordsPass(dictionary, sources, rules, layout, places);
  }
}
