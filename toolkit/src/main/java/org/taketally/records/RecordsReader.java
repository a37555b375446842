package org.taketally.records;

import java.nio.file.Path;
import java.sql.Connection;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.taketally.files.SafeFile;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.BlankResult;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.Places;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowVisitor;
import org.taketally.records.rows.SetAsideSink;
import org.taketally.records.sources.QuerySource;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SourceFiles;
import org.taketally.terms.CropProfile;
import tech.tablesaw.api.Table;

/**
 * Reads graft records: CSV, XLSX, or what a database query gives; many files and seasons at once.
 * Nothing is guessed silently and no row is lost: rows read = kept + set aside.
 *
 * <p>Options are kept in the reader, which never changes: each method gives a new one.
 */
public final class RecordsReader {

  private final RecordsReading reading;

  private RecordsReader(RecordsReading reading) {
    this.reading = reading;
  }

  /**
   * A reader of sheets in the columns of {@link RecordColumn}, without a crop profile.
   *
   * @return the reader
   */
  public static RecordsReader defaults() {
    return new RecordsReader(RecordsReading.defaults());
  }

  /**
   * With a dictionary for sheets that are not in our columns.
   *
   * @param aDictionary what is said of the sheets
   * @return a new reader
   */
  public RecordsReader withDictionary(SheetDictionary aDictionary) {
    return new RecordsReader(new RecordsReading(aDictionary, reading.crop(), reading.today()));
  }

  /**
   * With what a blank result means, for files whose dictionary doesn't say it.
   *
   * @param meaning neither taken nor failed, or failed
   * @return a new reader
   */
  public RecordsReader withBlankResult(BlankResult meaning) {
    return new RecordsReader(
        new RecordsReading(
            reading.dictionary().blankResult(meaning), reading.crop(), reading.today()));
  }

  /**
   * With one rootstock for all grafts, for files that have no such column.
   *
   * @param rootstock its name, or a word for not known
   * @return a new reader
   */
  public RecordsReader withRootstock(String rootstock) {
    return new RecordsReader(
        new RecordsReading(
            reading.dictionary().constant(RecordColumn.ROOTSTOCK.columnName(), rootstock),
            reading.crop(),
            reading.today()));
  }

  /**
   * With a crop profile, so that storage and days to assessment are compared with what is usual.
   *
   * @param profile the profile
   * @return a new reader
   */
  public RecordsReader withCrop(CropProfile profile) {
    return new RecordsReader(new RecordsReading(reading.dictionary(), profile, reading.today()));
  }

  /**
   * With another day than today's as the last a record can be from.
   *
   * @param day the day
   * @return a new reader
   */
  public RecordsReader withToday(LocalDate day) {
    return new RecordsReader(new RecordsReading(reading.dictionary(), reading.crop(), day));
  }

  /**
   * Reads files together.
   *
   * @param files CSV or XLSX files, at least one
   * @return the records
   * @throws RecordsUnreadable if a file can't be read at all
   */
  public GraftRecords read(List<Path> files) {
    return frame(SourceFiles.open(files, reading.dictionary()));
  }

  /**
   * Reads files and folders together: of a folder all CSV and XLSX files, in the order of their
   * names; those that don't hold records are left out, which is said.
   *
   * @param paths files or folders, at least one
   * @return the records
   * @throws RecordsUnreadable if a file named can't be read at all, or none of a folder
   */
  public GraftRecords read(Path... paths) {
    return records(reading.read(paths));
  }

  /**
   * Reads a table, such as a frame that was joined or filtered. Its text columns hold names, also
   * where all of them look like numbers.
   *
   * @param table in the columns of {@link RecordColumn}, or of the dictionary; not changed
   * @return the records
   * @throws RecordsUnreadable if a needed column is absent or there is no row
   */
  public GraftRecords read(Table table) {
    return records(reading.read(table));
  }

  /**
   * Reads the files of a folder together, in the order of their names.
   *
   * @param folder where they are
   * @param pattern which of its files, e.g. {@code grafts-*.csv}
   * @return the records
   * @throws RecordsUnreadable if there is no such file, or one can't be read at all
   */
  public GraftRecords readFolder(Path folder, String pattern) {
    return read(SourceFiles.matching(folder, pattern));
  }

  /**
   * Reads what a query gives; for example DuckDB's {@code SELECT * FROM 'grafts.parquet'}.
   *
   * @param connection an open connection, used until this returns
   * @param query one SELECT statement
   * @return the records
   * @throws RecordsUnreadable if the query fails or a needed column is absent
   */
  public GraftRecords read(Connection connection, String query) {
    return frame(List.of(new QuerySource(connection, query)));
  }

  private GraftRecords frame(List<RowSource> sources) {
    return records(reading.read(sources));
  }

  private static GraftRecords records(RecordsReading.Result read) {
    return new GraftRecords(read.frame(), read.check(), read.setAside());
  }

  /**
   * Reads and checks files without holding their rows: each usable row is shown to a visitor once.
   * The checks, and what is kept and set aside, are those of {@link #read(List)}.
   *
   * @param files CSV or XLSX files, at least one
   * @param wanted names of the columns the visitor will ask for
   * @param visitor sees the rows
   * @return what reading brought to light
   * @throws RecordsUnreadable if a file can't be read at all
   */
  public RecordsCheck scan(List<Path> files, Collection<String> wanted, RowVisitor visitor) {
    return scan(files, wanted, visitor, new SetAsideSink.Nowhere());
  }

  /**
   * As {@link #scan(List, Collection, RowVisitor)}, and writes rows set aside at once.
   *
   * @param files CSV or XLSX files, at least one
   * @param wanted names of the columns the visitor will ask for
   * @param visitor sees the rows
   * @param setAside CSV file to write, replaced if it exists; none of the files read
   * @return what reading brought to light
   * @throws RecordsUnreadable if a file can't be read at all
   * @throws IllegalArgumentException if {@code setAside} is one of the files read
   * @throws java.io.UncheckedIOException if {@code setAside} can't be written
   */
  public RecordsCheck scan(
      List<Path> files, Collection<String> wanted, RowVisitor visitor, Path setAside) {
    for (Path file : files) {
      if (SafeFile.isSame(file, setAside)) {
        throw new IllegalArgumentException(
            "rows set aside would be written over %s, which is being read; choose another file"
                .formatted(file));
      }
    }
    return scan(files, wanted, visitor, new SetAsideSink.Csv(setAside));
  }

  /**
   * As {@link #scan(List, Collection, RowVisitor, Path)}, of what a query gives.
   *
   * @param connection an open connection, used until this returns
   * @param query one SELECT statement
   * @param wanted names of the columns the visitor will ask for
   * @param visitor sees the rows
   * @param setAside CSV file to write, replaced if it exists
   * @return what reading brought to light
   * @throws RecordsUnreadable if the query fails or a needed column is absent
   */
  public RecordsCheck scan(
      Connection connection,
      String query,
      Collection<String> wanted,
      RowVisitor visitor,
      Path setAside) {
    return reading
        .pass(List.of(new QuerySource(connection, query)), Set.copyOf(wanted)::contains)
        .run(visitor, new SetAsideSink.Csv(setAside));
  }

  private RecordsCheck scan(
      List<Path> files, Collection<String> wanted, RowVisitor visitor, SetAsideSink setAside) {
    return reading
        .pass(SourceFiles.open(files, reading.dictionary()), Set.copyOf(wanted)::contains)
        .run(visitor, setAside);
  }

  /**
   * Reads repeated assessments: columns record, assessed_date and alive, one row for each time a
   * graft or batch was looked at.
   *
   * @param files CSV or XLSX files, at least one
   * @param records the records they belong to
   * @return the assessments, in order of time for each record
   * @throws RecordsUnreadable if a file can't be read at all
   */
  public Assessments assessments(List<Path> files, GraftRecords records) {
    RecordsLayout layout = RecordsLayout.ofAssessments();
    AssessmentRules rules = new AssessmentRules(records, layout, reading.today());
    SetAsideSink.Memory setAside = new SetAsideSink.Memory();
    RecordsCheck check =
        new RecordsPass(
                reading.dictionary(),
                new ArrayList<>(SourceFiles.openCounts(files, reading.dictionary())),
                rules,
                layout,
                new Places())
            .run(rules, setAside);
    return new Assessments(rules.histories(), check, setAside.all());
  }
}
