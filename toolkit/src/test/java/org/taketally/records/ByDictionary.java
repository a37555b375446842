package org.taketally.records;

import java.nio.file.Path;
import java.util.List;
import org.taketally.records.dictionary.SheetDictionary;

/** A sheet read by a dictionary that a test types. */
final class ByDictionary {

  private ByDictionary() {}

  static GraftRecords read(String dictionary, Path file) {
    return RecordsReader.defaults()
        .withDictionary(SheetDictionary.parse("d.json", dictionary))
        .read(List.of(file));
  }
}
