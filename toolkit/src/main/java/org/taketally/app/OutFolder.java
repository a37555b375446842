package org.taketally.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.SetAside;
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
    setAside("Rows", "set-aside.csv", records.setAside(), printing);
  }

  /** Repeated counts that can't be used: they are repaired and named with the others again. */
  void setAside(Assessments counts, Printing printing) throws IOException {
    setAside("Repeated counts", "set-aside-counts.csv", counts.setAside(), printing);
  }

  private void setAside(String what, String name, SetAside rows, Printing printing)
      throws IOException {
    Path file = write(name, rows.csv());
    printing.paragraphs(
        "%s set aside stand in %s as they were typed, each with its reasons: correct them there and read that file together with the others."
            .formatted(what, file));
  }
}
