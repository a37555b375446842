package org.taketally.records.invented;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The truth behind a set of invented records: the file {@code truth.csv} of its folder.
 *
 * <p>Effects are logits of the final take, added up; other values have the unit the file states.
 */
final class Truth {

  private final Map<String, Map<String, Double>> values = new LinkedHashMap<>();

  private Truth() {}

  /** Reads the truth bundled with the toolkit. */
  static Truth bundled(String folder) {
    String resource = BundledDatasets.resource(folder, "truth.csv");
    try (InputStream in = Truth.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalArgumentException("no truth bundled at " + resource);
      }
      return read(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** This truth and what another says beside it. */
  Truth and(Truth other) {
    Truth both = new Truth();
    for (Truth each : List.of(this, other)) {
      each.values.forEach(
          (component, levels) ->
              both.values.computeIfAbsent(component, name -> new LinkedHashMap<>()).putAll(levels));
    }
    return both;
  }

  private static Truth read(Reader reader) {
    Truth truth = new Truth();
    for (NamedCsvRecord row : CsvReader.builder().ofNamedCsvRecord(reader)) {
      truth
          .values
          .computeIfAbsent(row.getField("component"), name -> new LinkedHashMap<>())
          .put(row.getField("level"), Double.valueOf(row.getField("value")));
    }
    return truth;
  }

  /** Levels of a component in the order of the file. */
  List<String> levels(String component) {
    return new ArrayList<>(of(component).keySet());
  }

  /** The value of one level; a component without levels has the level "". */
  double value(String component, String level) {
    Double value = of(component).get(level);
    if (value == null) {
      throw new IllegalArgumentException(
          "no %s \"%s\" in the truth; there are %s"
              .formatted(component, level, of(component).keySet()));
    }
    return value;
  }

  /** The value of one level, or 0 where the truth does not speak of it. */
  double valueOrZero(String component, String level) {
    return values.getOrDefault(component, Map.of()).getOrDefault(level, 0.0);
  }

  private Map<String, Double> of(String component) {
    Map<String, Double> levels = values.get(component);
    if (levels == null) {
      throw new IllegalArgumentException(
          "no %s in the truth; there are %s".formatted(component, values.keySet()));
    }
    return levels;
  }
}
