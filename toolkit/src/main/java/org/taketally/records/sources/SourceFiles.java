package org.taketally.records.sources;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.dictionary.SheetShape;

/** Opens files as sources of rows, by what they hold, not by their names. */
public final class SourceFiles {

  private SourceFiles() {}

  public static List<RowSource> open(List<Path> files, SheetDictionary dictionary) {
    return open(files, dictionary, false);
  }

  /** Files of repeated counts: of a sheet with several counting days, every count. */
  public static List<RowSource> openCounts(List<Path> files, SheetDictionary dictionary) {
    return open(files, dictionary, true);
  }

  private static List<RowSource> open(
      List<Path> files, SheetDictionary dictionary, boolean counts) {
    if (files.isEmpty()) {
      throw new IllegalArgumentException("name at least one file of records");
    }
    List<RowSource> sources = new ArrayList<>();
    for (Path file : files) {
      sources.addAll(open(file, dictionary, counts));
    }
    return sources;
  }

  /**
   * A file that holds one list with headings of its own, such as an order book.
   *
   * @param file CSV or XLSX
   * @param dictionary says how it is written
   * @param known whether a heading is one of the list's
   * @return the list
   * @throws org.taketally.records.problems.RecordsUnreadable if it can't be read, or is a workbook
   *     of several worksheets
   */
  public static RowSource list(Path file, SheetDictionary dictionary, Predicate<String> known) {
    ToIntFunction<List<String>> count = headings -> (int) headings.stream().filter(known).count();
    List<RowSource> sheets = written(file, dictionary, dictionary.rules(file.toString()), count);
    if (sheets.size() != 1) {
      throw FileSigns.refuse(
          file,
          sheets.size() + " worksheets with something in them",
          "save the one as CSV UTF-8, or name it in a dictionary (--dictionary): \"sheet\"");
    }
    RowSource typed = SourceAsTyped.of(sheets.get(0));
    return FillDownSource.of(typed, dictionary.rules(typed.name()).shape().fillDown());
  }

  /** All CSV and XLSX files of a folder, in the order of their names. */
  public static List<RowSource> inFolder(Path folder, SheetDictionary dictionary) {
    List<RowSource> sources = new ArrayList<>();
    for (Path file : matching(folder, "*.{csv,CSV,tsv,xlsx,XLSX}")) {
      open(file, dictionary, false).forEach(source -> sources.add(new FolderSource(source)));
    }
    return sources;
  }

  /** The files of a folder whose names match, in the order of their names. */
  public static List<Path> matching(Path folder, String pattern) {
    List<Path> files = new ArrayList<>();
    try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, pattern)) {
      found.forEach(files::add);
    } catch (NotDirectoryException e) {
      throw FileSigns.refuse(folder, "a file", "name the folder it is in");
    } catch (IOException e) {
      throw FileSigns.cannotOpen(folder, e);
    }
    if (files.isEmpty()) {
      throw FileSigns.refuse(
          folder.resolve(pattern), "no such file", "check the folder and the pattern");
    }
    Collections.sort(files);
    return files;
  }

  private static List<RowSource> open(Path file, SheetDictionary dictionary, boolean counts) {
    boolean ours = Files.isRegularFile(file) && FileSigns.isSetAside(file);
    SheetRules said = dictionary.rules(file.toString());
    SheetRules rules = ours ? said.asWrittenHere() : said;
    return written(file, dictionary, rules, headings -> known(headings, rules)).stream()
        .map(SourceAsTyped::of)
        .map(source -> shaped(source, dictionary.rules(source.name()), counts))
        .toList();
  }

  /**
   * The lists of a file as they stand there: the worksheets of a workbook, or the one of a text.
   */
  private static List<RowSource> written(
      Path file, SheetDictionary dictionary, SheetRules rules, ToIntFunction<List<String>> known) {
    boolean wideText = rules.encoding().name().toUpperCase(Locale.ROOT).startsWith("UTF-16");
    return FileSigns.form(file, wideText) == FileSigns.Form.WORKBOOK
        ? XlsxSource.sheets(file, dictionary::rules, known)
        : List.of(new CsvSource(file, rules, known));
  }

  /** Blanks filled first, so that each part of a wide row has its names. */
  private static RowSource shaped(RowSource source, SheetRules rules, boolean counts) {
    SheetShape shape = rules.shape();
    RowSource filled = FillDownSource.of(source, shape.fillDown());
    RowSource joined = DeadSource.of(WideSource.of(filled, shape.wide()), rules);
    return CountsSource.of(joined, rules, counts);
  }

  /**
   * The encoding a text seems to be in, where that isn't UTF-8.
   *
   * @return none where it is UTF-8, or no text
   */
  public static Optional<String> encoding(Path file) {
    return FileSigns.form(file, true) == FileSigns.Form.TEXT
        ? Optional.of(TextFile.encoding(file).name()).filter(name -> !name.equals("UTF-8"))
        : Optional.empty();
  }

  private static int known(List<String> headings, SheetRules rules) {
    Set<String> names = new HashSet<>();
    KnownColumns.names().forEach(name -> names.add(NameLikeness.plain(name)));
    rules
        .columns()
        .values()
        .forEach(
            c ->
                Stream.of(c.from(), c.dead())
                    .flatMap(Optional::stream)
                    .forEach(heading -> names.add(NameLikeness.plain(heading))));
    rules
        .shape()
        .wide()
        .forEach(part -> part.columns().values().forEach(h -> names.add(NameLikeness.plain(h))));
    return (int)
        headings.stream()
            .filter(h -> names.contains(NameLikeness.plain(h)) || !CommonWords.columns(h).isEmpty())
            .count();
  }
}
