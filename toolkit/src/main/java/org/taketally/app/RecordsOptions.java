package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.taketally.cells.CellsOf;
import org.taketally.cells.CountedRecords;
import org.taketally.records.Assessments;
import org.taketally.records.CropProfiles;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.BlankResult;
import org.taketally.records.rows.RowVisitor;
import org.taketally.terms.CropProfile;
import org.taketally.terms.Plural;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import org.taketally.terms.Severity;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Which records to read, and how: the same for every command that reads records. */
final class RecordsOptions {

  private static final long MANY_ROWS = 50_000;

  private static final int SHOWN = 5;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Parameters(
      arity = "0..*",
      paramLabel = "FILE",
      description = "Records: CSV or XLSX, one file or several seasons at once.")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--query",
      paramLabel = "SQL",
      description =
          "Records from a database instead of files, e.g. \"SELECT * FROM 'grafts.parquet'\".")
  private String query;

  @Option(
      names = "--url",
      paramLabel = "JDBC",
      description = "The database, e.g. jdbc:duckdb: (${DEFAULT-VALUE}).",
      defaultValue = "jdbc:duckdb:")
  private String url = "jdbc:duckdb:";

  @Option(
      names = "--driver",
      paramLabel = "JAR",
      description = "Jar with the database's JDBC driver; none comes with Taketally.")
  private Path driver;

  @Mixin private DictionaryOption dictionary = new DictionaryOption();

  @Option(
      names = "--crop",
      paramLabel = "CROP",
      description =
          "Crop profile for the checks: a name of \"taketally crop list\" or a file; without it,"
              + " limits that differ between crops aren't checked.")
  private String crop;

  @Option(
      names = "--blank-result",
      paramLabel = "MEANING",
      description =
          "What a blank result means where the dictionary doesn't say: failed (only takes were"
              + " written down), taken (only failures were) or unassessed (nobody looked).")
  private BlankResult blankResult;

  @Option(
      names = "--rootstock",
      paramLabel = "NAME",
      description =
          "What all grafts stand on, where the records have no such column; unknown if nobody"
              + " knows.")
  private String rootstock;

  @Option(
      names = "--assessments",
      paramLabel = "FILE",
      description =
          "Repeated counts of the same rows (record, assessed_date, alive): keeps early take, final"
              + " take and late loss apart.")
  private List<Path> assessments = new ArrayList<>();

  /** Whether repeated counts were named. */
  boolean countedAgain() {
    return !assessments.isEmpty();
  }

  /** Repeated counts of the records, which were named; says nothing. */
  Assessments counted(GraftRecords records) {
    assessments.forEach(this::requireFile);
    return reader().assessments(assessments, records);
  }

  static String whatWasCounted(Assessments counts) {
    return "repeated counts: " + rows(counts.check().provenance());
  }

  /** Repeated counts of the records, if any were named; says what was read. */
  Optional<Assessments> assessments(GraftRecords records) {
    if (assessments.isEmpty()) {
      return Optional.empty();
    }
    Assessments read = counted(records);
    PrintWriter err = commandLine().getErr();
    err.println(whatWasCounted(read));
    read.check().sameTwice().forEach(problem -> err.println("  " + problem.sentence()));
    if (read.check().provenance().rowsSetAside() > 0) {
      read.check().problems().stream()
          .filter(problem -> problem.severity() == Severity.ERROR)
          .limit(SHOWN)
          .forEach(problem -> err.println("  " + problem.sentence()));
    }
    err.flush();
    return Optional.of(read);
  }

  /** Every file that is read: records, counts, dictionary, crop profile. */
  List<Path> files() {
    List<Path> all = new ArrayList<>(files);
    all.addAll(assessments);
    dictionary.file().ifPresent(all::add);
    if (crop != null && !CropProfiles.names().contains(crop)) {
      all.add(Path.of(crop));
    }
    return all;
  }

  /** The dictionary, if one was named. */
  Optional<Path> dictionary() {
    return dictionary.file();
  }

  /** The crop profile as named, if one was; of a file its name alone. */
  Optional<String> crop() {
    return Optional.ofNullable(crop).map(name -> Path.of(name).getFileName().toString());
  }

  GraftRecords read() throws IOException {
    requireSource();
    if (query != null) {
      try (Database database = database()) {
        return reader().read(database.connection(), query);
      }
    }
    return read(files);
  }

  /** Other files, read in the same way. */
  GraftRecords read(List<Path> others) {
    others.forEach(this::requireFile);
    return reader().read(others);
  }

  /** Looks through the files without holding their rows; those set aside go into a file. */
  RecordsCheck scan(Path setAside) throws IOException {
    requireSource();
    if (query != null) {
      try (Database database = database()) {
        return reader().scan(database.connection(), query, List.of(), RowVisitor.NONE, setAside);
      }
    }
    files.forEach(this::requireFile);
    return reader().scan(files, List.of(), RowVisitor.NONE, setAside);
  }

  private void requireSource() {
    if (files.isEmpty() == (query == null)) {
      throw new ParameterException(
          commandLine(),
          query == null
              ? "name at least one file of records, or a --query of a database"
              : "found files and --query, expected one of the two; a database can read CSV files,"
                  + " too");
    }
  }

  private Database database() throws IOException {
    if (driver != null) {
      requireFile(driver);
    }
    return Database.open(commandLine(), url, driver);
  }

  /** Whether the rows come from a database. */
  boolean asksDatabase() {
    return query != null;
  }

  /** Counts the files without holding their rows, by some columns only. */
  CountedRecords count(Collection<String> columns) {
    requireSource();
    files.forEach(this::requireFile);
    return CellsOf.files(reader(), files, columns);
  }

  /**
   * Says on standard error how many rows were read, kept and set aside, and of many rows that what
   * follows takes its time.
   */
  void report(RecordsCheck check) {
    PrintWriter err = commandLine().getErr();
    err.println(whatWasRead(check));
    check.requireSettled();
    if (check.provenance().rowsSetAside() > 0) {
      err.println("run \"taketally check\" on the same files to see why rows were set aside");
    }
    if (check.provenance().rowsKept() >= MANY_ROWS) {
      err.println("working out the answers; with this many rows that can take minutes");
    }
    err.flush();
  }

  /** As {@link #counts}, then a line for each file or worksheet that may count grafts twice. */
  static String whatWasRead(RecordsCheck check) {
    return Stream.concat(
            Stream.of(counts(check)), check.sameTwice().stream().map(Problem::sentence))
        .collect(Collectors.joining(System.lineSeparator()));
  }

  /** Rows read, kept and set aside, grafts and takes, in one line. */
  static String counts(RecordsCheck check) {
    Provenance provenance = check.provenance();
    return String.format(
        Locale.ROOT,
        "%s; %s assessed, %,d took",
        rows(provenance),
        Plural.of(check.grafts(), "graft"),
        check.takes());
  }

  private static String rows(Provenance provenance) {
    return String.format(
        Locale.ROOT,
        "%s read = %,d kept + %,d set aside",
        Plural.of(provenance.rowsRead(), "row"),
        provenance.rowsKept(),
        provenance.rowsSetAside());
  }

  private RecordsReader reader() {
    RecordsReader reader = dictionary.reader(commandLine());
    reader = crop == null ? reader : reader.withCrop(profile());
    reader = rootstock == null ? reader : reader.withRootstock(rootstock);
    return blankResult == null ? reader : reader.withBlankResult(blankResult);
  }

  private CropProfile profile() {
    if (CropProfiles.names().contains(crop)) {
      return CropProfiles.named(crop);
    }
    if (!crop.contains(".") && !Files.exists(Path.of(crop))) {
      return bundledCrop(commandLine(), crop);
    }
    requireFile(Path.of(crop));
    return CropProfiles.load(Path.of(crop));
  }

  /** A profile that comes with the toolkit; says which there are if that isn't one. */
  static CropProfile bundledCrop(CommandLine commandLine, String name) {
    try {
      return CropProfiles.named(name);
    } catch (IllegalArgumentException unknown) {
      throw new ParameterException(
          commandLine,
          unknown.getMessage() + " (\"taketally crop template\" prints one to start from)");
    }
  }

  private void requireFile(Path file) {
    InputFile.require(commandLine(), file);
  }

  private CommandLine commandLine() {
    return command.commandLine();
  }
}
