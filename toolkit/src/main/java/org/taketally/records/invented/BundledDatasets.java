package org.taketally.records.invented;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.taketally.files.FileSet;
import org.taketally.files.Guard;

/** The data sets that travel inside the toolkit, the same files as in the folder datasets. */
public final class BundledDatasets {

  /** Avocado records, clean to read: rootstock makes no practical difference. */
  public static final String AVOCADO = Scenarios.AVOCADO;

  /** The same circle's sheets as volunteers keep them, with planted faults. */
  public static final String AVOCADO_MESSY = Scenarios.AVOCADO + "-messy";

  /** Walnut records: one rootstock is bad. */
  public static final String WALNUT = Scenarios.WALNUT;

  /** Counts of grafts that others published, a data set each. */
  public static final List<String> HISTORIC =
      List.of(
          "historic-counts/allanblackia-2011",
          "historic-counts/hickory-1923",
          "historic-counts/hickory-1924",
          "historic-counts/hickory-a-year-later",
          "historic-counts/walnut-1923");

  /** The avocado circle's running season, an order book and a list of requests for budwood. */
  public static final String RUNNING_SEASON = Scenarios.RUNNING;

  private static final List<String> DESCRIPTIONS =
      List.of("README.md", "datapackage.json", "columns.csv");

  private BundledDatasets() {}

  /**
   * The data sets there are.
   *
   * @return {@link #AVOCADO}, {@link #AVOCADO_MESSY}, {@link #WALNUT} and {@link #HISTORIC}
   */
  public static List<String> names() {
    List<String> all = new ArrayList<>(List.of(AVOCADO, AVOCADO_MESSY, WALNUT, RUNNING_SEASON));
    all.addAll(HISTORIC);
    return List.copyOf(all);
  }

  /**
   * Copies a data set into a folder. Files of the same names are replaced if they were copied so
   * before and nobody changed them since.
   *
   * @param dataset one of {@link #names}
   * @param folder where to, made if it isn't there
   * @return the copied files, descriptions first, then in the order of the data package
   * @throws IllegalArgumentException if no such data set is bundled
   * @throws IOException if a file can't be written
   */
  public static List<Path> copyTo(String dataset, Path folder) throws IOException {
    return copyTo(dataset, folder, Guard.of(List.of()));
  }

  /**
   * Copies a data set into a folder.
   *
   * @param dataset one of {@link #names}
   * @param folder where to, made if it isn't there
   * @param guard what may be written over
   * @return the copied files, descriptions first, then in the order of the data package
   * @throws IllegalArgumentException if no such data set is bundled
   * @throws IOException if a file can't be written
   */
  public static List<Path> copyTo(String dataset, Path folder, Guard guard) throws IOException {
    List<String> names = new ArrayList<>(DESCRIPTIONS);
    names.addAll(resources(dataset));
    FileSet files = FileSet.in(folder, dataset, guard);
    for (String name : names) {
      files.add(
          name,
          out -> {
            try (InputStream in = open(dataset, name)) {
              in.transferTo(out);
            }
          });
    }
    return files.write();
  }

  private static List<String> resources(String dataset) throws IOException {
    try (InputStream in = open(dataset, "datapackage.json")) {
      JsonObject described =
          JsonParser.parseReader(new InputStreamReader(in, StandardCharsets.UTF_8))
              .getAsJsonObject();
      List<String> paths = new ArrayList<>();
      for (JsonElement resource : described.getAsJsonArray("resources")) {
        paths.add(resource.getAsJsonObject().get("path").getAsString());
      }
      return paths;
    }
  }

  static InputStream open(String dataset, String name) {
    InputStream in = BundledDatasets.class.getResourceAsStream(resource(dataset, name));
    if (in == null) {
      throw new IllegalArgumentException(
          "no file %s of a data set \"%s\" is bundled; there are %s"
              .formatted(name, dataset, names()));
    }
    return in;
  }

  static String resource(String dataset, String name) {
    return "/datasets/" + dataset + "/" + name;
  }
}
