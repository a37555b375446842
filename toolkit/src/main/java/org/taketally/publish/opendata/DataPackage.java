package org.taketally.publish.opendata;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.files.Csv;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Problem;
import org.taketally.wording.AnalysisJson;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.Wording;

/**
 * Records, the dictionary that reads them back, what is wrong with them, and their answers, as one
 * Data Package: every file with size, checksum and columns; licence, citation and where it all
 * comes from.
 *
 * @see <a href="https://datapackage.org/standard/data-package/">Data Package 2.0</a>
 */
public final class DataPackage {

  private static final Gson JSON =
      new GsonBuilder().serializeNulls().setPrettyPrinting().disableHtmlEscaping().create();

  private final PackageOptions options;
  private final RecordsCheck check;
  private final List<PackageFile> files = new ArrayList<>();

  private DataPackage(PackageOptions options, RecordsCheck check) {
    this.options = options;
    this.check = check;
  }

  /**
   * A package of records and their answers.
   *
   * @param read as read from the sheets, with the problems found
   * @param open the rows that go out
   * @param analysis answers from {@code open}
   * @param options what the package says of itself
   * @return the package
   */
  public static DataPackage of(
      GraftRecords read, OpenRecords open, Analysis analysis, PackageOptions options) {
    DataPackage made = new DataPackage(options, read.check());
    made.files.add(open.table());
    made.files.add(open.dictionary());
    options
        .origin()
        .dictionary()
        .filter(text -> options.named())
        .ifPresent(
            text ->
                made.files.add(
                    PackageFile.text("sheets-dictionary.json", "How the sheets were read", text)));
    made.files.addAll(new MiappeTables(open.records().frame(), options).all());
    made.files.add(made.problems());
    if (options.named() && read.setAside().size() > 0) {
      made.files.add(setAside(read));
    }
    made.files.add(
        PackageFile.text(
            "answers.json", "All answers", JSON.toJson(AnalysisJson.of(analysis)) + "\n"));
    for (Answer answer : analysis.answers()) {
      for (AnswerTable table : Wording.of(answer).tables()) {
        if (made.files.stream().noneMatch(file -> file.text().equals(table.toCsv()))) {
          made.files.add(made.table(table));
        }
      }
    }
    return made;
  }

  /**
   * With repeated counts of the same rows.
   *
   * @param counts as read
   * @param open the rows they belong to
   * @return this package
   */
  public DataPackage with(Assessments counts, OpenRecords open) {
    files.add(1, RepeatedCounts.of(counts, open.records().frame()));
    return this;
  }

  private PackageFile table(AnswerTable table) {
    return PackageFile.table(answer(table), table.caption(), table.toCsv(), TableFields.of(table));
  }

  /** A name that no other file has and every file system bears. */
  private String answer(AnswerTable table) {
    String plain = "answer-" + table.name().replaceAll("[^A-Za-z0-9]+", "-");
    String name = plain + ".csv";
    for (int i = 2; taken(name); i++) {
      name = plain + "-" + i + ".csv";
    }
    return name;
  }

  private boolean taken(String name) {
    return files.stream().anyMatch(file -> file.name().equals(name));
  }

  /** Every problem where names may go out; else how many of each kind, because words hold names. */
  private PackageFile problems() {
    List<List<String>> lines = new ArrayList<>();
    lines.add(List.of("severity", "problem", "file", "column", "count"));
    for (ProblemSummary.Group group : check.summary().groups()) {
      lines.add(
          List.of(
              group.severity().name().toLowerCase(Locale.ROOT),
              group.kind().plural(),
              fileName(group.file()),
              group.column(),
              Long.toString(group.count())));
    }
    if (options.named()) {
      return everyProblem();
    }
    return PackageFile.table(
        "problems.csv",
        "What is wrong or worth a look, counted",
        Csv.text(lines),
        TableFields.texts(
            "severity", "error: rows set aside; check: worth a look; note",
            "problem", "what is wrong",
            "file", "sheet it was found in",
            "column", "heading in that sheet",
            "count", "how often"));
  }

  private PackageFile everyProblem() {
    List<List<String>> lines = new ArrayList<>();
    lines.add(List.of("severity", "file", "line", "column", "found", "expected", "remedy"));
    for (Problem problem : check.problems()) {
      lines.add(
          List.of(
              problem.severity().name().toLowerCase(Locale.ROOT),
              fileName(problem.file()),
              problem.line() > 0 ? Long.toString(problem.line()) : "",
              problem.column(),
              problem.found(),
              problem.expected(),
              problem.remedy()));
    }
    return PackageFile.table(
        "problems.csv",
        "What is wrong or worth a look: the first thousand of each kind, sheet and column",
        Csv.text(lines),
        TableFields.texts(
            "severity", "error: row set aside; check: worth a look; note",
            "file", "sheet it was found in",
            "line", "line there; the headings are line 1",
            "column", "heading there",
            "found", "what stands there",
            "expected", "what would have been right",
            "remedy", "what to do"));
  }

  private static PackageFile setAside(GraftRecords read) {
    JsonArray fields = new JsonArray();
    String csv = read.setAside().csv();
    List<String> names = new ArrayList<>(read.setAside().header());
    names.addAll(
        List.of("set_aside_extra", "set_aside_file", "set_aside_line", "set_aside_reasons"));
    names.forEach(name -> fields.add(TableFields.field(name, "string", "as typed in the sheet")));
    return PackageFile.table("set-aside.csv", "Rows that can't be used, as typed", csv, fields);
  }

  /**
   * The name of a file without its folders.
   *
   * @param source as in {@link org.taketally.terms.Provenance#sources}, or as typed
   * @return what stands behind the last slash
   */
  public static String fileName(String source) {
    return source.substring(Math.max(source.lastIndexOf('/'), source.lastIndexOf('\\')) + 1);
  }

  /**
   * All files, by name.
   *
   * @return the description first, then README.md and CITATION.cff, then the data
   */
  public Map<String, String> files() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("datapackage.json", JSON.toJson(description()) + "\n");
    PackageWords words = new PackageWords(options, check, files);
    all.put("README.md", words.readme());
    all.put("CITATION.cff", words.citation());
    files.forEach(file -> all.put(file.name(), file.text()));
    return all;
  }

  private JsonObject description() {
    JsonObject all = new JsonObject();
    all.addProperty("$schema", "https://datapackage.org/profiles/2.0/datapackage.json");
    all.addProperty("name", options.name());
    all.addProperty("title", options.title());
    all.addProperty("description", PackageWords.description(check));
    all.addProperty("version", "1.0.0");
    all.addProperty("created", options.origin().created() + "T00:00:00Z");
    JsonObject licence = new JsonObject();
    licence.addProperty("name", options.licence().id());
    licence.addProperty("path", options.licence().url());
    licence.addProperty("title", options.licence().title());
    all.add("licenses", array(licence));
    JsonArray creators = new JsonArray();
    for (String creator : options.creators()) {
      JsonObject one = new JsonObject();
      one.addProperty("title", creator);
      JsonArray roles = new JsonArray();
      roles.add("creator");
      one.add("roles", roles);
      creators.add(one);
    }
    all.add("contributors", creators);
    JsonArray keywords = new JsonArray();
    List.of("grafting", "take", "rootstock", "cultivar").forEach(keywords::add);
    all.add("keywords", keywords);
    all.add("provenance", provenance());
    JsonArray resources = new JsonArray();
    files.forEach(file -> resources.add(file.resource()));
    all.add("resources", resources);
    return all;
  }

  private static JsonArray array(JsonObject one) {
    JsonArray array = new JsonArray();
    array.add(one);
    return array;
  }

  private JsonObject provenance() {
    JsonObject from = new JsonObject();
    from.addProperty("software", "taketally");
    from.addProperty("softwareVersion", options.origin().version());
    JsonArray command = new JsonArray();
    options.origin().command().forEach(command::add);
    from.add("options", command);
    from.addProperty("seed", options.origin().seed());
    options.origin().crop().ifPresent(crop -> from.addProperty("crop", crop));
    JsonArray sources = new JsonArray();
    check.provenance().sources().forEach(source -> sources.add(fileName(source)));
    from.add("sheets", sources);
    from.addProperty("rowsRead", check.provenance().rowsRead());
    from.addProperty("rowsKept", check.provenance().rowsKept());
    from.addProperty("rowsSetAside", check.provenance().rowsSetAside());
    from.addProperty("grafts", check.grafts());
    from.addProperty("takes", check.takes());
    from.addProperty("graftersNamed", options.named());
    return from;
  }

  /** Repeated counts in the columns they are read in. */
  private static final class RepeatedCounts {

    static PackageFile of(Assessments counts, tech.tablesaw.api.Table frame) {
      boolean seasons = frame.containsColumn(RecordColumn.SEASON.columnName());
      var grafted = frame.dateColumn(RecordColumn.GRAFT_DATE.columnName());
      List<List<String>> lines = new ArrayList<>();
      List<String> header = new ArrayList<>(List.of(RecordColumn.RECORD.columnName()));
      if (seasons) {
        header.add(RecordColumn.SEASON.columnName());
      }
      header.add(RecordColumn.ASSESSED_DATE.columnName());
      header.add(KnownColumns.ALIVE.name());
      lines.add(header);
      for (Assessments.History history : counts.histories()) {
        for (int i = 0; i < history.days().length; i++) {
          List<String> line = new ArrayList<>(List.of(history.record()));
          if (seasons) {
            line.add(frame.stringColumn(RecordColumn.SEASON.columnName()).getString(history.row()));
          }
          line.add(grafted.get(history.row()).plusDays(history.days()[i]).toString());
          line.add(Integer.toString(history.alive()[i]));
          lines.add(line);
        }
      }
      JsonArray fields = new JsonArray();
      for (String name : header) {
        ColumnKind kind =
            name.equals(KnownColumns.ALIVE.name())
                ? ColumnKind.COUNT
                : name.equals(RecordColumn.ASSESSED_DATE.columnName())
                    ? ColumnKind.DATE
                    : ColumnKind.LEVELS;
        fields.add(TableFields.field(name, kind));
      }
      return PackageFile.table(
          "assessments.csv", "Repeated counts of the same rows", Csv.text(lines), fields);
    }
  }
}
