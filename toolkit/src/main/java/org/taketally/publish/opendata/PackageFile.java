package org.taketally.publish.opendata;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.taketally.files.Csv;
import org.taketally.wording.opendata.Heading;
import org.taketally.wording.opendata.TableWords;

/**
 * One file of a package.
 *
 * @param name its name in the folder
 * @param title what it holds
 * @param text all of it
 * @param fields of a table: as in Table Schema 2.0
 */
record PackageFile(String name, String title, String text, Optional<JsonArray> fields) {

  static final String TABLE_SCHEMA = "https://datapackage.org/profiles/2.0/tableschema.json";

  static PackageFile table(String name, String title, String text, JsonArray fields) {
    return new PackageFile(name, title, text, Optional.of(fields));
  }

  /** A table of text in its own columns. */
  static PackageFile table(String name, TableWords words, List<List<String>> lines) {
    return table(name, words.title(), words.headings(), lines);
  }

  /** A table of text, without its headings. */
  static PackageFile table(
      String name, String title, List<Heading> headings, List<List<String>> lines) {
    List<List<String>> all = new ArrayList<>();
    all.add(headings.stream().map(Heading::name).toList());
    all.addAll(lines);
    return table(name, title, Csv.text(all), TableFields.texts(headings));
  }

  static PackageFile text(String name, String title, String text) {
    return new PackageFile(name, title, text, Optional.empty());
  }

  /** The resource that describes it, with its size and checksum. */
  JsonObject resource() {
    JsonObject resource = new JsonObject();
    int dot = name.lastIndexOf('.');
    String format = name.substring(dot + 1);
    resource.addProperty("name", name.substring(0, dot));
    fields.ifPresent(f -> resource.addProperty("type", "table"));
    resource.addProperty("path", name);
    resource.addProperty("title", title);
    resource.addProperty("format", format);
    resource.addProperty("mediatype", format.equals("csv") ? "text/csv" : "application/json");
    resource.addProperty("encoding", "utf-8");
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    resource.addProperty("bytes", bytes.length);
    resource.addProperty("hash", "sha256:" + sha256(bytes));
    fields.ifPresent(f -> resource.add("schema", schema(f)));
    return resource;
  }

  private static JsonObject schema(JsonArray fields) {
    JsonObject schema = new JsonObject();
    schema.addProperty("$schema", TABLE_SCHEMA);
    schema.add("fields", fields);
    JsonArray missing = new JsonArray();
    missing.add("");
    schema.add("missingValues", missing);
    return schema;
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
