package org.taketally.publish.opendata;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.files.FileNames;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.wording.AnalysisJson;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.Wording;
import org.taketally.wording.opendata.FileWords;
import org.taketally.wording.opendata.PackageWords;

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
                    PackageFile.text(
                        "sheets-dictionary.json", FileWords.SHEETS_DICTIONARY.title(), text)));
    made.files.addAll(new MiappeTables(open.records().frame(), options).all());
    made.files.add(ProblemFiles.problems(made.check, options.named()));
    if (options.named() && read.setAside().size() > 0) {
      made.files.add(ProblemFiles.setAside(read));
    }
    made.files.add(
        PackageFile.text(
            "answers.json",
            FileWords.ANSWERS.title(),
            JSON.toJson(AnalysisJson.of(analysis)) + "\n"));
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

  /**
   * All files, by name.
   *
   * @return the description first, then README.md and CITATION.cff, then the data
   */
  public Map<String, String> files() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("datapackage.json", JSON.toJson(description()) + "\n");
    all.put("README.md", readme());
    all.put("CITATION.cff", Citation.of(options));
    files.forEach(file -> all.put(file.name(), file.text()));
    return all;
  }

  private String readme() {
    boolean counted = files.stream().anyMatch(file -> file.name().equals(RepeatedCounts.FILE));
    return PackageWords.readme(
        new PackageWords.About(
            options.title(),
            options.creators(),
            options.licence(),
            options.named(),
            counted ? RepeatedCounts.FILE : "",
            options.origin().seed()),
        check,
        files.stream().map(file -> new PackageWords.File(file.name(), file.title())).toList());
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
    PackageWords.keywords().forEach(keywords::add);
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
    check.provenance().sources().forEach(source -> sources.add(FileNames.withoutFolder(source)));
    from.add("sheets", sources);
    from.addProperty("rowsRead", check.provenance().rowsRead());
    from.addProperty("rowsKept", check.provenance().rowsKept());
    from.addProperty("rowsSetAside", check.provenance().rowsSetAside());
    from.addProperty("grafts", check.grafts());
    from.addProperty("takes", check.takes());
    from.addProperty("graftersNamed", options.named());
    return from;
  }
}
