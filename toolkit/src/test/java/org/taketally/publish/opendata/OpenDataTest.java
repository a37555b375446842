package org.taketally.publish.opendata;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.taketally.JsonSchemas;
import org.taketally.analysis.Analysis;
import org.taketally.answers.AnswerOptions;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeModel;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.invented.BundledDatasets;
import org.taketally.wording.AnalysisJson;
import org.taketally.wording.opendata.OpenLicence;
import tech.tablesaw.columns.Column;

/** A data package holds what it says, and reads back to the same answers. */
class OpenDataTest {

  private static final Path DATASETS = Path.of(System.getProperty("taketally.root"), "datasets");
  private static final Path SCHEMAS = Path.of("src/test/resources/datapackage-1.1.10");

  @TempDir private Path folder;

  private static PackageOptions options(boolean named) {
    return new PackageOptions(
        "Grafts of \"Häl: den\" & others",
        List.of("A grower's circle", "O'Dell: #1"),
        OpenLicence.CC_BY,
        named,
        new PackageOptions.Origin(
            "1.2",
            List.of("package", "sheet.csv"),
            7,
            Optional.of("walnut"),
            Optional.of("{}"),
            LocalDate.of(2026, 3, 4)),
        new PackageOptions.Place(Optional.of("NZ"), Optional.of("Juglans regia")));
  }

  private static RecordsReader reader(Path dataset) {
    Path dictionary = dataset.resolve("dictionary.json");
    return Files.exists(dictionary)
        ? RecordsReader.defaults().withDictionary(SheetDictionary.load(dictionary))
        : RecordsReader.defaults();
  }

  private static GraftRecords read(String dataset) throws IOException {
    Path path = DATASETS.resolve(dataset);
    try (Stream<Path> files = Files.list(path)) {
      return reader(path)
          .read(
              files
                  .filter(file -> file.getFileName().toString().matches("(grafts|sheet).*\\.csv"))
                  .sorted()
                  .toList());
    }
  }

  /** One small fit: what is tested here is what goes in and comes out again. */
  private static Analysis analysis(GraftRecords records) {
    TakeModel model =
        TakeModel.ofTakes().adjustFor("rootstock").varyBy("cultivar").compare("rootstock");
    Cells cells = CellsOf.records(records, List.of("cultivar", "rootstock"));
    return Analysis.of(cells, model, AnswerOptions.defaults().withSeed(7));
  }

  private Map<String, String> write(DataPackage made) throws IOException {
    Map<String, String> files = made.files();
    for (Map.Entry<String, String> file : files.entrySet()) {
      Files.writeString(folder.resolve(file.getKey()), file.getValue());
    }
    return files;
  }

  private GraftRecords again() {
    return reader(folder).read(folder.resolve("records.csv"));
  }

  private static Map<String, List<String>> cells(GraftRecords records) {
    Map<String, List<String>> cells = new LinkedHashMap<>();
    for (Column<?> column : records.frame().columns()) {
      List<String> values = new ArrayList<>();
      for (int row = 0; row < column.size(); row++) {
        values.add(column.isMissing(row) ? "" : column.getString(row));
      }
      if (values.stream().anyMatch(value -> !value.isEmpty())) {
        cells.put(column.name() + " " + column.type().name(), values);
      }
    }
    return cells;
  }

  static List<String> datasets() {
    return BundledDatasets.names();
  }

  /** The same table and the same batches are the same answers: they hold nothing else. */
  @ParameterizedTest
  @MethodSource("datasets")
  void every_dataset_survives_package_and_back(String dataset) throws IOException {
    GraftRecords records = read(dataset);
    OpenRecords open = OpenRecords.of(records, true);
    Files.writeString(folder.resolve("records.csv"), open.table().text());
    Files.writeString(folder.resolve("dictionary.json"), open.dictionary().text());
    GraftRecords again = again();
    assertThat(cells(again)).containsExactlyInAnyOrderEntriesOf(cells(records));
    assertThat(again.batches()).isEqualTo(records.batches());
    assertThat(again.setAside().size()).isZero();
    again.check().requireSettled();
  }

  @Test
  void answers_come_back_to_the_last_digit() throws IOException {
    GraftRecords records = read("halden-bay-walnut");
    OpenRecords open = OpenRecords.of(records, true);
    Assessments counts =
        RecordsReader.defaults()
            .assessments(
                List.of(DATASETS.resolve("halden-bay-walnut/assessments.csv")), open.records());
    Analysis analysis = analysis(open.records()).withLateLoss(open.records(), counts);
    Map<String, String> files =
        write(DataPackage.of(records, open, analysis, options(true)).with(counts, open));
    GraftRecords again = again();
    Assessments countsAgain =
        reader(folder).assessments(List.of(folder.resolve("assessments.csv")), again);
    assertThat(countsAgain.histories()).isEqualTo(counts.histories());
    JsonObject answers = AnalysisJson.of(analysis(again).withLateLoss(again, countsAgain));
    JsonObject first = AnalysisJson.of(analysis(records).withLateLoss(records, counts)).deepCopy();
    JsonObject packed = JsonParser.parseString(files.get("answers.json")).getAsJsonObject();
    for (JsonObject one : List.of(answers, first, packed)) {
      one.remove("records");
    }
    assertThat(answers).isEqualTo(first);
    assertThat(packed.toString()).isEqualTo(answers.toString());
  }

  @Test
  void blanks_batches_and_names_that_look_like_numbers_survive() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("sheet.csv"),
            """
            cultivar,rootstock,grafter,Lot,Bed,Weight,grafts,takes,notes
            Corvane,Pellin,Ann,7,=2+3,1.25,5,3,secret
            Corvane,Pellin,Bo,8,-x,0.00001,5,,
            "Or""rin, red",007,Ann,7,"b
            c",12,5,,
            Orrin,007,,9,d,,5,4,
            """);
    GraftRecords records =
        RecordsReader.defaults()
            .withDictionary(
                SheetDictionary.parse(
                    "d",
                    "{\"blank_result\": \"failed\", \"batches\": [\"Lot\"], \"columns\": {\"Lot\":"
                        + " {\"levels\": true}}}"))
            .read(sheet);
    OpenRecords open = OpenRecords.of(records, true);
    Files.writeString(folder.resolve("records.csv"), open.table().text());
    Files.writeString(folder.resolve("dictionary.json"), open.dictionary().text());
    assertThat(cells(again())).containsExactlyInAnyOrderEntriesOf(cells(records));
    assertThat(again().batches()).containsExactly("Lot");
    assertThat(again().takes()).isEqualTo(7);
    assertThat(again().grafts()).isEqualTo(20);
  }

  @Test
  void nobody_is_named_unless_asked_for() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("sheet.csv"),
            """
            cultivar,rootstock,grafter,grafts,takes,notes
            Corvane,Pellin,Annelise,5,3,Annelise was ill
            Orrin,Pellin,Bodkin,5,2,
            Orrin,Varric,Annelise,5,9,
            Corvane,Varric,Bodkins,5,4,
            Corvane,Varric,Annelise,5,3,
            """);
    GraftRecords records = RecordsReader.defaults().read(sheet);
    OpenRecords open = OpenRecords.of(records, false);
    Map<String, String> files =
        write(DataPackage.of(records, open, analysis(open.records()), options(false)));
    assertThat(files).doesNotContainKeys("set-aside.csv", "sheets-dictionary.json");
    files.forEach((name, text) -> assertThat(text).as(name).doesNotContain("Annelise", "Bodkin"));
    assertThat(again().frame().stringColumn("grafter").asList())
        .containsExactly("grafter 1", "grafter 2", "grafter 3", "grafter 1");
    assertThat(again().takes()).isEqualTo(records.takes());
    OpenRecords all = OpenRecords.of(records, true);
    assertThat(DataPackage.of(records, all, analysis(all.records()), options(true)).files())
        .hasEntrySatisfying("set-aside.csv", text -> assertThat(text).contains("Annelise,5,9"))
        .hasEntrySatisfying("problems.csv", text -> assertThat(text).contains("Bodkins"));
  }

  @Test
  void is_what_its_description_says() throws Exception {
    GraftRecords records = read("historic-counts/walnut-1923");
    OpenRecords open = OpenRecords.of(records, true);
    Map<String, String> files =
        write(DataPackage.of(records, open, analysis(open.records()), options(true)));
    JsonObject described = JsonParser.parseString(files.get("datapackage.json")).getAsJsonObject();
    assertThat(described.get("$schema").getAsString())
        .isEqualTo("https://datapackage.org/profiles/2.0/datapackage.json");
    assertThat(described.get("name").getAsString()).isEqualTo("grafts-of-hal-den-others");
    JsonObject provenance = described.getAsJsonObject("provenance");
    assertThat(provenance.get("softwareVersion").getAsString()).isEqualTo("1.2");
    assertThat(provenance.get("seed").getAsInt()).isEqualTo(7);
    assertThat(provenance.get("grafts").getAsInt()).isEqualTo(343);
    List<String> named = new ArrayList<>(List.of("datapackage.json", "README.md", "CITATION.cff"));
    for (JsonElement element : described.getAsJsonArray("resources")) {
      JsonObject resource = element.getAsJsonObject();
      String path = resource.get("path").getAsString();
      named.add(path);
      byte[] bytes = files.get(path).getBytes(StandardCharsets.UTF_8);
      assertThat(resource.get("bytes").getAsInt()).isEqualTo(bytes.length);
      assertThat(resource.get("hash").getAsString())
          .isEqualTo(
              "sha256:"
                  + HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
      if (resource.has("schema")) {
        fits(files.get(path), resource.getAsJsonObject("schema"));
      }
    }
    assertThat(files.keySet()).containsExactlyInAnyOrderElementsOf(named);
  }

  /** Headings and types of a table. */
  private static void fits(String csv, JsonObject schema) throws IOException {
    List<JsonObject> fields = new ArrayList<>();
    schema.getAsJsonArray("fields").forEach(field -> fields.add(field.getAsJsonObject()));
    assertThat(csv.lines().findFirst().orElse(""))
        .contains(fields.get(0).get("name").getAsString());
    try (CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(csv)) {
      for (NamedCsvRecord row : rows) {
        assertThat(row.getHeader())
            .isEqualTo(fields.stream().map(field -> field.get("name").getAsString()).toList());
        for (JsonObject field : fields) {
          String value = row.getField(field.get("name").getAsString());
          if (!value.isEmpty()) {
            String expected =
                switch (field.get("type").getAsString()) {
                  case "integer" -> "-?\\d+";
                  case "number" -> "-?\\d+(\\.\\d+)?([eE]-?\\d+)?";
                  case "date" -> "\\d{4}-\\d{2}-\\d{2}";
                  case "boolean" -> "true|false";
                  default -> "(?s).*";
                };
            assertThat(value).as(field.toString()).matches(expected);
          }
        }
      }
    }
  }

  /** The schemas are those of version 1; see source.md beside them. */
  @Test
  void agrees_with_the_published_schemas() throws Exception {
    List<JsonElement> packages = described();
    assertThat(JsonSchemas.faults(schema("data-package.json"), packages)).containsOnly("");
    JsonElement broken = packages.get(0).deepCopy();
    broken.getAsJsonObject().addProperty("resources", "none");
    assertThat(JsonSchemas.faults(schema("data-package.json"), List.of(broken)).get(0))
        .contains("resources");
    List<JsonElement> tables = new ArrayList<>();
    for (JsonElement one : packages) {
      for (JsonElement resource : one.getAsJsonObject().getAsJsonArray("resources")) {
        if (resource.getAsJsonObject().has("schema")) {
          JsonObject table = resource.getAsJsonObject().deepCopy();
          table.addProperty("profile", "tabular-data-resource"); // version 2 says "type"
          tables.add(table);
        }
      }
    }
    assertThat(tables).hasSizeGreaterThan(30);
    assertThat(JsonSchemas.faults(schema("tabular-data-resource.json"), tables)).containsOnly("");
  }

  /** What is new in version 2, and nothing left of version 1. */
  @Test
  void keeps_the_rules_of_version_2() throws Exception {
    List<JsonElement> packages = described();
    JsonElement rules =
        JsonParser.parseString(
            Files.readString(Path.of("src/test/resources/datapackage-2/rules.json")));
    assertThat(JsonSchemas.faults(rules, packages)).hasSizeGreaterThan(5).containsOnly("");
    JsonElement old = packages.get(0).deepCopy();
    old.getAsJsonObject().addProperty("profile", "tabular-data-package");
    JsonElement untyped = packages.get(0).deepCopy();
    untyped.getAsJsonObject().getAsJsonArray("resources").get(0).getAsJsonObject().remove("type");
    assertThat(JsonSchemas.faults(rules, List.of(old, untyped)))
        .allSatisfy(fault -> assertThat(fault).isNotEmpty());
  }

  @Test
  void the_citation_agrees_with_its_published_schema() throws Exception {
    JsonElement schema =
        JsonParser.parseString(
            Files.readString(Path.of("src/test/resources/citation-file-format-1.2.0/schema.json")));
    JsonElement citation = JsonSchemas.ofYaml(made().get("CITATION.cff"));
    JsonElement nameless = citation.deepCopy();
    nameless.getAsJsonObject().remove("authors");
    List<String> faults = JsonSchemas.faults(schema, List.of(citation, nameless));
    assertThat(faults.get(0)).isEmpty();
    assertThat(faults.get(1)).contains("authors");
  }

  private static Map<String, String> made() throws IOException {
    OpenRecords open = OpenRecords.of(read("halden-bay-avocado-messy"), true);
    return DataPackage.of(open.records(), open, analysis(open.records()), options(true)).files();
  }

  /** One package made here, and those of the datasets. */
  private static List<JsonElement> described() throws IOException {
    List<JsonElement> packages = new ArrayList<>();
    packages.add(JsonParser.parseString(made().get("datapackage.json")));
    for (String dataset : datasets()) {
      packages.add(
          JsonParser.parseString(
              Files.readString(DATASETS.resolve(dataset).resolve("datapackage.json"))));
    }
    return packages;
  }

  private static JsonElement schema(String name) throws IOException {
    return JsonParser.parseString(Files.readString(SCHEMAS.resolve(name)));
  }

  @Test
  void a_package_without_a_title_or_anybody_is_refused() {
    assertThatThrownBy(
            () ->
                new PackageOptions(
                    " ", List.of("x"), OpenLicence.CC0, true, options(true).origin(), null))
        .hasMessageContaining("title");
    assertThat(OpenLicence.of("cc-by-4.0")).contains(OpenLicence.CC_BY);
    assertThat(OpenLicence.of("all rights reserved")).isEmpty();
  }
}
