package org.taketally.model;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/** Published counts of src/test/resources/checks as cells. */
final class CheckData {

  private final String name;
  private final List<String> header;
  private final List<String[]> rows = new ArrayList<>();

  private CheckData(String name) {
    this.name = name;
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                CheckData.class.getResourceAsStream("/checks/" + name + ".csv"),
                StandardCharsets.UTF_8))) {
      header = List.of(split(reader.readLine()));
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        rows.add(split(line));
      }
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private static String[] split(String line) {
    return line.replace("\"", "").split(",", -1);
  }

  static CheckData of(String name) {
    return new CheckData(name);
  }

  int[] counts(String column) {
    return rows.stream().mapToInt(row -> Integer.parseInt(row[place(column)])).toArray();
  }

  double[] numbers(String column) {
    return rows.stream().mapToDouble(row -> Double.parseDouble(row[place(column)])).toArray();
  }

  String[] texts(String column) {
    return rows.stream().map(row -> row[place(column)]).toArray(String[]::new);
  }

  Factor factor(String column) {
    return factor(column, texts(column));
  }

  /** Levels in the order of first sight. */
  static Factor factor(String column, String[] texts) {
    List<String> levels = List.copyOf(new LinkedHashSet<>(List.of(texts)));
    int[] codes = new int[texts.length];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = levels.indexOf(texts[i]);
    }
    return new Factor(column, levels, codes);
  }

  /** One level a row. */
  Factor rowFactor(String column) {
    String[] texts = new String[rows.size()];
    for (int i = 0; i < texts.length; i++) {
      texts[i] = "row " + (i + 1);
    }
    return factor(column, texts);
  }

  Measure measure(String column) {
    return new Measure(column, numbers(column));
  }

  Cells cells(int[] grafts, int[] takes, List<Factor> factors, List<Measure> measures) {
    double coefficients = 0;
    for (int i = 0; i < grafts.length; i++) {
      coefficients += CombinatoricsUtils.binomialCoefficientLog(grafts[i], takes[i]);
    }
    return new Cells(
        factors, measures, grafts, takes, coefficients, Provenance.of(name, grafts.length));
  }

  private int place(String column) {
    return header.indexOf(column);
  }
}
