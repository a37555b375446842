package org.taketally.app;

import java.nio.file.Path;
import java.util.Optional;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.SheetDictionary;
import picocli.CommandLine;
import picocli.CommandLine.Option;

/** What translates a sheet, for every command that reads records. */
final class DictionaryOption {

  @Option(
      names = "--dictionary",
      paramLabel = "FILE",
      description = "Translates columns, units, dates and spellings (JSON).")
  private Path file;

  /** The dictionary, if one was named. */
  Optional<Path> file() {
    return Optional.ofNullable(file);
  }

  /** What is said of a list to plan by, which may be read beside records. */
  SheetDictionary ofList(CommandLine commandLine, boolean besideRecords) {
    if (file == null) {
      return SheetDictionary.none();
    }
    InputFile.require(commandLine, file);
    SheetDictionary said = SheetDictionary.load(file);
    return besideRecords ? said.besideRecords() : said;
  }

  /** The usual reader, with the dictionary if one was named. */
  RecordsReader reader(CommandLine commandLine) {
    if (file == null) {
      return RecordsReader.defaults();
    }
    InputFile.require(commandLine, file);
    return RecordsReader.defaults().withDictionary(SheetDictionary.load(file));
  }
}
