package org.taketally.app;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Gives the JSON Schema by which editors complete a dictionary. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Prints the JSON Schema of a dictionary. Editors complete a dictionary that names it.",
      "Example: taketally dictionary schema --out dictionary.schema.json",
      "In the dictionary: \"$schema\": \"dictionary.schema.json\""
    })
final class DictionarySchemaCommand implements Callable<Integer> {

  @Mixin private TextOut out = new TextOut();

  @Override
  public Integer call() throws IOException {
    try (InputStream schema =
        DictionarySchemaCommand.class.getResourceAsStream("/datasets/dictionary.schema.json")) {
      out.give(new String(schema.readAllBytes(), StandardCharsets.UTF_8), List.of());
    }
    return ExitStatus.FINE;
  }
}
