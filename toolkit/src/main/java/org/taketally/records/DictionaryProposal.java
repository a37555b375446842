package org.taketally.records;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Stream;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SameFiles;
import org.taketally.records.sources.SourceFiles;
import org.taketally.records.sources.Trim;

/**
 * A dictionary proposed for sheets as they are kept: what each entry rests on, and what could not
 * be decided. A proposal is for a person to read and change; nothing is ever read by it unasked.
 */
public final class DictionaryProposal {

  private static final int ENOUGH = 2;
  private static final int TITLES = 10;

  private final JsonObject json = new JsonObject();
  private final List<ProposedSheet> sheets = new ArrayList<>();

  private DictionaryProposal() {}

  /**
   * Looks at sheets and proposes how to read them.
   *
   * @param files CSV or XLSX files, at least one; each gets rules of its own under {@code files} if
   *     there are several
   * @return the proposal
   * @throws org.taketally.records.problems.RecordsUnreadable if a file can't be read at all
   */
  public static DictionaryProposal of(List<Path> files) {
    DictionaryProposal proposal = new DictionaryProposal();
    proposal.json.addProperty("about", "proposed, to be read and corrected by a person");
    JsonObject several = new JsonObject();
    List<Path> once = SameFiles.distinct(files);
    for (Path file : once) {
      JsonObject base = new JsonObject();
      SourceFiles.encoding(file).ifPresent(name -> base.addProperty("encoding", name));
      for (ProposedSheet sheet : proposal.ofFile(file, base, once.size() == 1)) {
        proposal.compare(sheet);
        proposal.sheets.add(sheet);
        if (!alone(sheet.source(), file, once.size() == 1)) {
          named(sheet, key(file, sheet.source()), several);
        }
      }
    }
    if (!several.isEmpty()) {
      proposal.json.add("files", several);
    }
    return proposal;
  }

  /** Whether a sheet is all there is, so that its rules are those of the whole dictionary. */
  private static boolean alone(RowSource source, Path file, boolean only) {
    return only && source.name().equals(file.toString());
  }

  /** What is proposed for the sheets of a file; those that hold no records are left out. */
  private List<ProposedSheet> ofFile(Path file, JsonObject base, boolean only) {
    List<RowSource> found = open(file, base);
    boolean others = found.stream().anyMatch(DictionaryProposal::hasHeadings);
    List<ProposedSheet> all = new ArrayList<>();
    for (RowSource source : found) {
      JsonObject rules = alone(source, file, only) ? json : new JsonObject();
      base.asMap().forEach(rules::add);
      all.add(others && !hasHeadings(source) ? leftOut(source) : sheet(file, source, rules));
    }
    boolean names = all.stream().anyMatch(ProposedSheet::holdsNames);
    all.replaceAll(sheet -> names && !sheet.holdsNames() ? leftOut(sheet.source()) : sheet);
    return all;
  }

  /** Whether some of its headings, wherever they stand, are known. */
  private static boolean hasHeadings(RowSource source) {
    return source.likelyHeadingRow() > 0
        || source.headings().stream().filter(ProposedHeadings::known).count() >= ENOUGH;
  }

  /** A worksheet such as one of notes, beside others that hold records. */
  private static ProposedSheet leftOut(RowSource source) {
    ProposedSheet sheet = new ProposedSheet(source, new JsonObject(), new LinkedHashMap<>());
    sheet.because(
        "it has hardly a heading that is known, or none for cultivar or rootstock, and is taken to"
            + " hold no records: every command leaves it out and says so; if it holds some, name its headings under \"columns\"");
    return sheet;
  }

  /** Asks about a list that was looked at before, in whatever file. */
  private void compare(ProposedSheet sheet) {
    sheets.stream()
        .filter(before -> SameFiles.same(before.source(), sheet.source()))
        .findFirst()
        .ifPresent(
            before ->
                sheet.ask(
                    "it holds the same rows as %s; name only one of the two when reading, else each"
                        + " graft counts twice",
                    before.name()));
  }

  /** Files of one name in several folders can't be told apart by a dictionary. */
  private static void named(ProposedSheet sheet, String key, JsonObject several) {
    if (several.has(key) && !several.get(key).equals(sheet.rules())) {
      sheet.ask(
          "another file is called %s too and is kept in another way, but a dictionary tells files"
              + " apart by their names; rename one of them and have both proposed again",
          key);
    } else {
      several.add(key, sheet.rules());
    }
  }

  private static List<RowSource> open(Path file, JsonObject rules) {
    return SourceFiles.open(List.of(file), SheetDictionary.parse("proposal", rules.toString()));
  }

  private static String key(Path file, RowSource source) {
    String name = file.getFileName().toString();
    return source.sheet().isPresent() && !source.name().equals(file.toString())
        ? name + ", sheet " + source.sheet().get()
        : name;
  }

  /** What is proposed for one sheet. */
  private static ProposedSheet sheet(Path file, RowSource found, JsonObject rules) {
    long line = headingRow(found);
    if (line > 1) {
      rules.addProperty("heading_row", line);
    }
    RowSource source = line > 1 ? below(file, found, rules) : found;
    ProposedSheet sheet = new ProposedSheet(source, rules, new LinkedHashMap<>());
    if (rules.has("encoding")) {
      sheet.because(
          "its letters aren't in UTF-8 and are taken as %s, so that the headings read %s",
          rules.get("encoding").getAsString(), String.join(", ", found.headings()));
    }
    if (line > 1) {
      sheet.because("line %d looks like the headings", line);
    }
    repeated(sheet);
    new ProposedHeadings(sheet).find();
    new ProposedColumns(sheet).propose();
    return sheet;
  }

  /** Asks about headings over several columns, which can't be told apart. */
  private static void repeated(ProposedSheet sheet) {
    List<String> all = sheet.source().headings();
    List<String> several =
        all.stream()
            .filter(heading -> !heading.isEmpty() && Collections.frequency(all, heading) > 1)
            .distinct()
            .toList();
    if (!several.isEmpty()) {
      sheet.ask(
          "\"%s\" %s over several columns; give each column a heading of its own (such as \"made"
              + " 2024\" and \"made 2025\"), or put lists that stand side by side one below the"
              + " other, and have the sheet proposed again",
          String.join("\", \"", several), several.size() == 1 ? "stands" : "stand");
    }
  }

  /** The line of the headings, where they aren't the first; 0 where they are. */
  private static long headingRow(RowSource found) {
    if (found.headings().stream().filter(ProposedHeadings::known).count() >= ENOUGH) {
      return 0;
    }
    return found.likelyHeadingRow() > 0 ? found.likelyHeadingRow() : belowTitle(found);
  }

  /** Below a first line with nothing but a title, the first line with several cells; or 0. */
  private static long belowTitle(RowSource found) {
    if (found.headings().stream().filter(heading -> !heading.isEmpty()).count() != 1) {
      return 0;
    }
    try (RowSource.Rows rows = found.open()) {
      RawRow row = rows.next();
      for (int i = 0; i < TITLES && row != null; i++) {
        long cells = Arrays.stream(row.fields()).filter(text -> !Trim.isBlank(text)).count();
        if (cells > ENOUGH) {
          return row.line();
        }
        row = rows.next();
      }
    }
    return 0;
  }

  private static RowSource below(Path file, RowSource found, JsonObject rules) {
    return open(file, rules).stream()
        .filter(source -> source.name().equals(found.name()))
        .findFirst()
        .orElse(found);
  }

  /**
   * The dictionary, as a file to be edited.
   *
   * @return JSON that {@link SheetDictionary#parse} reads
   */
  public String json() {
    JsonObject json = this.json.deepCopy();
    if (json.has("files")) {
      JsonObject files = json.getAsJsonObject("files");
      files.keySet().stream()
          .filter(name -> files.getAsJsonObject(name).isEmpty())
          .toList()
          .forEach(files::remove);
      if (files.isEmpty()) {
        json.remove("files");
      }
    }
    return new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create().toJson(json) + "\n";
  }

  /**
   * The sheets looked at.
   *
   * @return files, or worksheets of workbooks
   */
  public List<String> sheets() {
    return sheets.stream().map(ProposedSheet::name).toList();
  }

  /**
   * What the entries rest on.
   *
   * @return a sentence each, beginning with the sheet
   */
  public List<String> reasons() {
    return sheets.stream()
        .flatMap(sheet -> sheet.reasons().stream().map(reason -> sheet.name() + ": " + reason))
        .toList();
  }

  /**
   * What the entries of one sheet rest on.
   *
   * @param sheet one of {@link #sheets()}
   * @return a sentence each, without the sheet
   */
  public List<String> reasons(String sheet) {
    return named(sheet).flatMap(one -> one.reasons().stream()).toList();
  }

  /**
   * What could not be decided, with the readings there are.
   *
   * @return a sentence each, beginning with the sheet; empty if nothing is open
   */
  public List<String> questions() {
    return open().stream().map(OpenQuestion::sentence).toList();
  }

  /**
   * What could not be decided of one sheet.
   *
   * @param sheet one of {@link #sheets()}
   * @return a sentence each, without the sheet
   */
  public List<String> questions(String sheet) {
    return open(named(sheet)).stream().map(OpenQuestion::text).toList();
  }

  private Stream<ProposedSheet> named(String sheet) {
    return sheets.stream().filter(one -> one.name().equals(sheet));
  }

  /**
   * What could not be decided and isn't settled yet, to be asked one by one.
   *
   * @return questions with their choices; settling one changes {@link #json()}
   */
  public List<OpenQuestion> open() {
    return open(sheets.stream());
  }

  private static List<OpenQuestion> open(Stream<ProposedSheet> of) {
    return of.flatMap(sheet -> sheet.questions().stream())
        .filter(question -> !question.settled())
        .toList();
  }
}
