package org.taketally;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Holds JSON against a JSON Schema by the validator that comes with Debian's Jupyter (Python's
 * jsonschema). Tests are skipped where it is absent, and fail there where {@code CI=true}.
 */
public final class JsonSchemas {

  private static final Path PYTHON = Path.of("/usr/bin/python3");
  private static final String SCRIPT =
      """
      import json, sys
      from jsonschema.validators import validator_for
      given = json.load(sys.stdin)
      kind = validator_for(given["schema"])
      kind.check_schema(given["schema"])
      check = kind(given["schema"])
      print(json.dumps([
          "; ".join("/".join(map(str, e.absolute_path)) + ": " + e.message[:300]
                    for e in check.iter_errors(one))
          for one in given["documents"]]))
      """;

  private JsonSchemas() {}

  /**
   * What is wrong with documents.
   *
   * @param schema the schema
   * @param documents to be held against it
   * @return for each what is wrong, empty if nothing
   */
  public static List<String> faults(JsonElement schema, List<? extends JsonElement> documents)
      throws IOException, InterruptedException {
    require();
    JsonObject given = new JsonObject();
    given.add("schema", schema);
    JsonArray all = new JsonArray();
    documents.forEach(all::add);
    given.add("documents", all);
    Process python =
        new ProcessBuilder(PYTHON.toString(), "-c", SCRIPT).redirectErrorStream(true).start();
    python.getOutputStream().write(given.toString().getBytes(StandardCharsets.UTF_8));
    python.getOutputStream().close();
    String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (python.waitFor() != 0) {
      fail(said);
    }
    List<String> faults = new ArrayList<>();
    JsonParser.parseString(said).getAsJsonArray().forEach(one -> faults.add(one.getAsString()));
    return faults;
  }

  /**
   * YAML as JSON, by Python's reader of YAML.
   *
   * @param yaml a document
   * @return the same as JSON
   */
  public static JsonElement ofYaml(String yaml) throws IOException, InterruptedException {
    require();
    Process python =
        new ProcessBuilder(
                PYTHON.toString(),
                "-c",
                "import json, sys, yaml; print(json.dumps(yaml.safe_load(sys.stdin)))")
            .redirectErrorStream(true)
            .start();
    python.getOutputStream().write(yaml.getBytes(StandardCharsets.UTF_8));
    python.getOutputStream().close();
    String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (python.waitFor() != 0) {
      fail(said);
    }
    return JsonParser.parseString(said);
  }

  private static void require() throws IOException, InterruptedException {
    boolean there =
        Files.exists(PYTHON)
            && new ProcessBuilder(PYTHON.toString(), "-c", "import jsonschema").start().waitFor()
                == 0;
    if (!there && "true".equals(System.getenv("CI"))) {
      fail("Python's jsonschema is absent");
    }
    assumeTrue(there, "Python's jsonschema is absent, so this is not tested");
  }
}
