package org.taketally.records.checks;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.dictionary.SheetName;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.records.rows.ColumnTrack;
import org.taketally.records.rows.Headings;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.XlsxSource;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** What is worth saying of sheets as a whole: headings, columns of the user's own. */
public final class SheetNotes {

  private final SheetDictionary dictionary;
  private final ProblemLog log;
  private final Set<String> met = new HashSet<>();
  private final Map<String, String> said = new LinkedHashMap<>();
  private final Set<String> batches = new LinkedHashSet<>();
  private final Set<String> ignored = new LinkedHashSet<>();
  private final Set<String> ownHeadings = new LinkedHashSet<>();
  private final Set<String> allHeadings = new LinkedHashSet<>();
  private final List<String> sources = new ArrayList<>();

  public SheetNotes(SheetDictionary dictionary, ProblemLog log) {
    this.dictionary = dictionary;
    this.log = log;
  }

  public void add(String file, Headings headings, SheetRules rules) {
    sources.add(file);
    met.addAll(headings.meaning().values());
    met.addAll(rules.constants().keySet());
    if (!rules.shape().counts().isEmpty()) {
      met.add(RecordColumn.OUTCOME.columnName()); // says what marks at the counting days mean
    }
    rules.columns().forEach((name, entry) -> said.put(name, entry.from().orElse(name)));
    batches.addAll(rules.batches());
    ignored.addAll(rules.ignore());
    allHeadings.addAll(headings.all());
    headings.meaning().values().stream()
        .filter(name -> !KnownColumns.isKnown(name))
        .forEach(ownHeadings::add);
    Place header = new Place(file, rules.headingRow());
    headings
        .respelled()
        .forEach(
            (field, name) ->
                log.add(
                    ProblemKind.HEADING_RESPELLED,
                    header,
                    headings.heading(field),
                    () ->
                        new ProblemText(
                            headings.heading(field), "", "read as our column " + name)));
    headings
        .leftOut()
        .forEach(
            (field, name) ->
                log.add(
                    ProblemKind.OTHER_COLUMN,
                    header,
                    name,
                    () ->
                        new ProblemText(
                            name, "", "passed over: it is worked out from the others")));
  }

  /**
   * Refuses words of the dictionary that must be slips: no sheet has them, and one has nearly the
   * same. Says which others no sheet has.
   */
  public void close() {
    dictionary.unmatched(sources).forEach(this::requireFile);
    for (String name : batches) {
      requireBatch(name);
    }
    ignored.removeAll(allHeadings);
    ignored.forEach(name -> refuseIfNear("ignore", name, ownHeadings));
    met.forEach(said::remove);
    said.remove(KnownColumns.ALIVE.name());
    said.keySet().removeIf(KnownColumns::isListed); // of an order book beside the records
    said.forEach(
        (name, from) -> {
          refuseIfNear("columns." + name, from, ownHeadings);
          unused(name, from);
        });
  }

  private void unused(String name, String from) {
    log.add(
        ProblemKind.DICTIONARY_UNUSED,
        Place.whole(dictionary.name()),
        name,
        () ->
            new ProblemText(
                from,
                "a heading that some file has",
                "correct \"from\", or take the column out of the dictionary"));
  }

  private void requireFile(String pattern) {
    List<String> names =
        sources.stream()
            .filter(dictionary::unnamed)
            .flatMap(source -> SheetName.plain(source).stream())
            .toList();
    refuseIfNear("files", pattern, names);
    log.add(
        ProblemKind.DICTIONARY_FILE,
        Place.whole(dictionary.name()),
        "files",
        () -> new ProblemText(pattern, "", "none of the files read has such a name"));
  }

  private void requireBatch(String name) {
    if (!met.contains(name)) {
      String near =
          NameLikeness.nearest(name, List.copyOf(met))
              .map(like -> "; did you mean " + like + "?")
              .orElse("");
      throw slip("batches", name, "a column that some file has", "correct the name" + near);
    }
  }

  private void refuseIfNear(String where, String name, Collection<String> names) {
    String plain = NameLikeness.plain(name);
    for (String one : names) {
      if (NameLikeness.similarity(plain, NameLikeness.plain(one)) >= NameLikeness.NEARLY_ALIKE) {
        throw slip(where, name, "a name that some file has", "did you mean \"" + one + "\"?");
      }
    }
  }

  private RecordsUnreadable slip(String where, String found, String expected, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, dictionary.name(), 0, where, found, expected, remedy));
  }

  /** Says which worksheets of a workbook weren't read. */
  public void notRead(RowSource source, List<RowSource> all) {
    Path path = source.path().orElseThrow();
    List<String> read =
        all.stream()
            .filter(one -> one.path().equals(source.path()))
            .flatMap(one -> one.sheet().stream())
            .toList();
    for (String sheet : XlsxSource.notRead(path, read)) {
      log.add(
          ProblemKind.SHEET_NOT_NAMED,
          Place.whole(path.toString()),
          "",
          () ->
              new ProblemText(
                  "sheet " + sheet,
                  "",
                  "not read, because others are named or it is hidden; to read it, name it under"
                      + " \"sheets\" in the dictionary"));
    }
  }

  /** Says that a worksheet doesn't hold records, and why. */
  public void leftOut(RowSource source, RecordsUnreadable why) {
    log.add(
        ProblemKind.SHEET_LEFT_OUT,
        Place.whole(source.name()),
        "",
        () ->
            new ProblemText(
                why.problem().found(),
                why.problem().expected(),
                "left out; if it holds records, "
                    + why.problem().remedy()
                    + (source.ofFolder() ? "" : "; if not, name the others under \"sheets\"")));
  }

  /** Says of each column of the user's own whether it holds numbers or names, and why. */
  public static void ownColumns(RecordsLayout layout, String file, ProblemLog log) {
    for (int column = 0; column < layout.size(); column++) {
      ColumnTrack track = layout.track(column);
      if (track.own() && track.present()) {
        log.add(ProblemKind.OTHER_COLUMN, Place.whole(file), track.name(), () -> words(track));
      }
    }
  }

  private static ProblemText words(ColumnTrack track) {
    if (track.recorded() == 0) {
      return new ProblemText("no value in the rows kept", "", "kept, empty");
    }
    if (track.kind() == ColumnKind.NUMBER) {
      return new ProblemText(
          "numbers only",
          "",
          "kept as a column of numbers; say \"levels\": true in the dictionary if they are names");
    }
    return new ProblemText(
        track.notANumber(), "", "kept as a column of names, because not every value is a number");
  }

  public static RecordsUnreadable noRows(List<RowSource> sources) {
    String names = sources.stream().map(RowSource::name).collect(Collectors.joining(", "));
    return new RecordsUnreadable(
        new Problem(
            Severity.ERROR,
            names,
            0,
            "",
            "headings without a row below them",
            "at least one graft or batch",
            "check that the right file or sheet was named"));
  }
}
