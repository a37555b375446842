package org.taketally.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.taketally.records.GraftRecords;
import picocli.CommandLine.Option;

/** The folder pages, tables and set-aside rows are written to; made when first needed. */
final class OutFolder {

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Write pages and tables too, into this folder (rows set aside: taketally-out).")
  private Path named;

  /** Whether pages and tables were asked for. */
  boolean asked() {
    return named != null;
  }

  static OutFolder at(Path folder) {
    OutFolder out = new OutFolder();
    out.named = folder;
    return out;
  }

  Path write(String name, String text) throws IOException {
    Path folder = named == null ? Path.of("taketally-out") : named;
    Files.createDirectories(folder);
    Path file = folder.resolve(name);
    Files.writeString(file, text);
    return file;
  }

  void setAside(GraftRecords records, Printing printing) throws IOException {
    Path file = write("set-aside.csv", records.setAside().csv());
    printing.paragraphs(
        "Rows set aside stand in %s as they were typed, each with its reasons: correct them there and read that file together with the others."
            .formatted(file));
  }
}
