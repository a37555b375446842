package org.taketally.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import org.taketally.files.Content;
import org.taketally.files.FileSet;
import org.taketally.files.Guard;
import org.taketally.files.WouldReplace;
import org.taketally.records.Assessments;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The folder pages, tables and set-aside rows are written to; made when first needed. */
final class OutFolder {

  private static final int NAMES_TRIED = 1000;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Folder for pages and tables; what is written unasked goes to taketally-out without it.")
  private Path named;

  @Mixin private ReplaceOption replace = new ReplaceOption();

  /** Whether pages and tables were asked for. */
  boolean asked() {
    return named != null;
  }

  /** Where files of a command go. */
  Path folder() {
    return named == null ? Path.of("taketally-out") : named;
  }

  /** Files of one command, to be written together. */
  FileSet files(String command, Collection<Path> inputs) {
    return FileSet.in(folder(), command, replace.guard(inputs));
  }

  /** One file where the person said. */
  void write(Path file, Collection<Path> inputs, String text) throws IOException {
    FileSet.write(file, replace.guard(inputs), Content.text(text));
  }

  /** Rows set aside, under the first name that is nobody's work. */
  void setAside(Content rows, Collection<Path> inputs, Printing printing) throws IOException {
    printing.paragraphs(aside("Rows", "set-aside", rows, inputs));
  }

  /** Repeated counts that can't be used: they are repaired and named with the others again. */
  void setAside(Assessments counts, Collection<Path> inputs, Printing printing) throws IOException {
    printing.paragraphs(
        aside(
            "Repeated counts", "set-aside-counts", Content.text(counts.setAside().csv()), inputs));
  }

  private String aside(String what, String stem, Content rows, Collection<Path> inputs)
      throws IOException {
    WouldReplace last = null;
    for (int i = 1; i <= NAMES_TRIED; i++) {
      String name = i == 1 ? stem + ".csv" : stem + "-" + i + ".csv";
      try {
        Path file = FileSet.in(folder(), name, Guard.of(inputs)).add(name, rows).write().get(0);
        return "%s set aside stand in %s as they were typed, each with its reasons: correct them there and read that file together with the others."
            .formatted(what, file);
      } catch (WouldReplace taken) {
        last = taken;
      }
    }
    throw last;
  }
}
