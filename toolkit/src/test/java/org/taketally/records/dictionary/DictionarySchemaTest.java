package org.taketally.records.dictionary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.taketally.JsonSchemas;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.problems.RecordsUnreadable;

/**
 * datasets/dictionary.schema.json, docs/dictionary.md and the parser say the same: every example of
 * the page is read and fits the schema, every key has an example.
 */
class DictionarySchemaTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root"));

  /** A key with its meaning and its example, in a table of the page. */
  private static final Pattern ROW = Pattern.compile("\\| `.*\\| `(\".*)` \\|");

  private static JsonObject schema() throws IOException {
    return JsonParser.parseString(Files.readString(ROOT.resolve("datasets/dictionary.schema.json")))
        .getAsJsonObject();
  }

  private static String page(String name) throws IOException {
    return Files.readString(ROOT.resolve("docs").resolve(name));
  }

  /** The examples of the tables, those of columns below the others, and the blocks. */
  private static List<String> examples() throws IOException {
    String page = page("dictionary.md");
    int columns = page.indexOf("## Keys of one column");
    List<String> examples = new ArrayList<>();
    int at = 0;
    for (String line : page.split("\n", -1)) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        String example = "{" + row.group(1).replace("\\|", "|") + "}";
        examples.add(at > columns ? "{\"columns\": " + example + "}" : example);
      }
      at += line.length() + 1;
    }
    examples.addAll(blocks(page));
    return examples;
  }

  /** Indented JSON. */
  private static List<String> blocks(String page) {
    List<String> blocks = new ArrayList<>();
    StringBuilder block = new StringBuilder();
    for (String line : (page + "\n").split("\n", -1)) {
      if (line.startsWith("    ")) {
        block.append(line.substring(4)).append("\n");
      } else if (!block.isEmpty()) {
        if (block.toString().startsWith("{")) {
          blocks.add(block.toString());
        }
        block.setLength(0);
      }
    }
    return blocks;
  }

  private static List<String> files() throws IOException {
    try (Stream<Path> files = Files.walk(ROOT.resolve("datasets"))) {
      List<String> texts = new ArrayList<>();
      for (Path file : files.filter(f -> f.endsWith("dictionary.json")).sorted().toList()) {
        texts.add(Files.readString(file));
      }
      return texts;
    }
  }

  @Test
  void every_example_is_read_and_fits_the_schema() throws Exception {
    List<String> examples = examples();
    examples.addAll(files());
    examples.addAll(blocks(page("your-own-sheet.md")));
    assertThat(examples).hasSizeGreaterThan(30);
    List<JsonElement> parsed = new ArrayList<>();
    for (String example : examples) {
      SheetDictionary.parse("example", example);
      parsed.add(JsonParser.parseString(example));
    }
    List<String> faults = JsonSchemas.faults(schema(), parsed);
    for (int i = 0; i < faults.size(); i++) {
      assertThat(faults.get(i)).as(examples.get(i)).isEmpty();
    }
  }

  @Test
  void every_key_has_an_example() throws IOException {
    Set<String> keys = new HashSet<>();
    Set<String> ofColumns = new HashSet<>();
    for (String example : examples()) {
      JsonObject json = JsonParser.parseString(example).getAsJsonObject();
      keys.addAll(json.keySet());
      if (json.has("columns")) {
        for (Map.Entry<String, JsonElement> one : json.getAsJsonObject("columns").entrySet()) {
          if (one.getValue().isJsonObject()) {
            ofColumns.addAll(one.getValue().getAsJsonObject().keySet());
          }
        }
      }
    }
    keys.add("$schema"); // said in words
    assertThat(keys).containsAll(without(DictionaryParser.SHEET_KEYS, "sheet"));
    assertThat(ofColumns).isEqualTo(DictionaryParser.COLUMN_KEYS);
    assertThat(page("dictionary.md"))
        .contains("\"$schema\": \"dictionary.schema.json\"", "`sheet`");
  }

  private static Set<String> without(Set<String> keys, String key) {
    Set<String> others = new HashSet<>(keys);
    others.remove(key);
    return others;
  }

  @Test
  void the_schema_knows_the_keys_and_columns_the_parser_knows() throws IOException {
    JsonObject schema = schema();
    assertThat(schema.getAsJsonObject("properties").keySet())
        .isEqualTo(DictionaryParser.SHEET_KEYS);
    JsonObject columns = schema.getAsJsonObject("definitions").getAsJsonObject("columns");
    assertThat(columns.getAsJsonObject("properties").keySet()).containsAll(KnownColumns.names());
  }

  /** What the parser refuses, the schema underlines, as far as a schema can. */
  @Test
  void an_unknown_key_is_refused_by_both() throws Exception {
    List<String> wrong =
        List.of(
            "{\"colums\": {}}",
            "{\"columns\": {\"takes\": {\"unit\": \"inch\"}}}",
            "{\"columns\": {\"takes\": {\"form\": \"alive\"}}}",
            "{\"columns\": {\"outcome\": {\"same\": {\"dead\": [\"x\"]}}}}",
            "{\"columns\": {\"graft_date\": {\"same\": {\"a\": [\"x\"]}}}}",
            "{\"blank_result\": \"dead\"}",
            "{\"decimal\": \"comma\"}",
            "{\"counts\": [{\"days\": 30}]}",
            "{\"wide\": {\"set\": {}}}",
            "{\"dates_by\": {\"column\": \"Who\"}}",
            "{\"files\": {\"a.csv\": {\"files\": {}}}}",
            "{\"ignore\": \"Phone\"}");
    List<JsonElement> parsed = wrong.stream().map(JsonParser::parseString).toList();
    assertThat(JsonSchemas.faults(schema(), parsed)).allSatisfy(f -> assertThat(f).isNotEmpty());
    for (String one : wrong) {
      assertThatThrownBy(() -> SheetDictionary.parse("wrong", one))
          .as(one)
          .isInstanceOf(RecordsUnreadable.class);
    }
  }
}
