package org.taketally.records;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Opens files as sources of rows, by what they hold, not by their names. */
final class SourceFiles {

  private SourceFiles() {}

  static List<RowSource> open(List<Path> files, Dictionary dictionary) {
    if (files.isEmpty()) {
      throw new IllegalArgumentException("name at least one file of records");
    }
    List<RowSource> sources = new ArrayList<>();
    for (Path file : files) {
      sources.add(open(file, dictionary.rules(file.toString())));
    }
    return sources;
  }

  private static RowSource open(Path file, SheetRules rules) {
    boolean wideText = rules.encoding().name().toUpperCase(Locale.ROOT).startsWith("UTF-16");
    return FileSigns.form(file, wideText) == FileSigns.Form.WORKBOOK
        ? new XlsxSource(file, rules.sheet())
        : new CsvSource(file, rules, headings -> known(headings, rules));
  }

  private static int known(List<String> headings, SheetRules rules) {
    Set<String> names = new HashSet<>();
    KnownColumns.names().forEach(name -> names.add(NameLikeness.plain(name)));
    rules
        .columns()
        .values()
        .forEach(c -> c.from().ifPresent(f -> names.add(NameLikeness.plain(f))));
    return (int) headings.stream().filter(h -> names.contains(NameLikeness.plain(h))).count();
  }
}
