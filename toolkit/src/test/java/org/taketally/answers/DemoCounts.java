package org.taketally.answers;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** The repeated counts of a data set under {@code datasets}. */
final class DemoCounts {

  private static final List<String> FACTORS = List.of("rootstock", "stock_condition", "cultivar");

  private DemoCounts() {}

  static List<CountedRow> of(String dataset) throws IOException {
    Path folder = Path.of(System.getProperty("taketally.root"), "datasets", dataset);
    Map<String, NamedCsvRecord> made = new LinkedHashMap<>();
    for (Path file : sheets(folder)) {
      rows(file).forEach(row -> made.put(row.getField("record"), row));
    }
    Map<String, List<CountedRow.Count>> counts = new LinkedHashMap<>();
    for (NamedCsvRecord row : rows(folder.resolve("assessments.csv"))) {
      NamedCsvRecord graft = made.get(row.getField("record"));
      long day =
          ChronoUnit.DAYS.between(
              LocalDate.parse(graft.getField("graft_date")),
              LocalDate.parse(row.getField("assessed_date")));
      counts
          .computeIfAbsent(row.getField("record"), record -> new ArrayList<>())
          .add(new CountedRow.Count(day, Long.parseLong(row.getField("alive"))));
    }
    List<CountedRow> counted = new ArrayList<>();
    counts.forEach((record, list) -> counted.add(row(made.get(record), list)));
    return counted;
  }

  private static CountedRow row(NamedCsvRecord graft, List<CountedRow.Count> counts) {
    Map<String, String> levels = new LinkedHashMap<>();
    FACTORS.forEach(factor -> levels.put(factor, graft.getField(factor)));
    long grafts = graft.findField("grafts").map(Long::parseLong).orElse(1L);
    return new CountedRow(graft.getField("record"), levels, grafts, counts);
  }

  private static List<Path> sheets(Path folder) throws IOException {
    TreeSet<Path> sheets = new TreeSet<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "grafts-*.csv")) {
      files.forEach(sheets::add);
    }
    return List.copyOf(sheets);
  }

  private static List<NamedCsvRecord> rows(Path file) throws IOException {
    try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(file)) {
      return reader.stream().toList();
    }
  }
}
