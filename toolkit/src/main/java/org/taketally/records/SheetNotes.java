package org.taketally.records;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** What is worth saying of sheets as a whole: headings, columns of the user's own. */
final class SheetNotes {

  private final Dictionary dictionary;
  private final ProblemLog log;
  private final Set<String> met = new HashSet<>();
  private final Set<String> said = new LinkedHashSet<>();

  SheetNotes(Dictionary dictionary, ProblemLog log) {
    this.dictionary = dictionary;
    this.log = log;
  }

  void add(String file, Headings headings, SheetRules rules) {
    met.addAll(headings.meaning().values());
    said.addAll(rules.columns().keySet());
    Place header = new Place(file, 1);
    headings
        .respelled()
        .forEach(
            (field, name) ->
                log.add(
                    ProblemKind.HEADING_RESPELLED,
                    header,
                    headings.heading(field),
                    () -> new Wording(headings.heading(field), "", "read as our column " + name)));
    headings
        .leftOut()
        .forEach(
            (field, name) ->
                log.add(
                    ProblemKind.OTHER_COLUMN,
                    header,
                    name,
                    () -> new Wording(name, "", "passed over: it is worked out from the others")));
  }

  /** Says which columns of the dictionary no sheet has. */
  void close() {
    said.removeAll(met);
    said.remove(Assessments.ALIVE.name());
    for (String name : said) {
      log.add(
          ProblemKind.DICTIONARY_UNUSED,
          Place.whole(dictionary.name()),
          name,
          () ->
              new Wording(
                  name,
                  "a heading that some file has",
                  "correct \"from\", or take the column out of the dictionary"));
    }
  }

  /** Says of each column of the user's own whether it holds numbers or names, and why. */
  static void ownColumns(RecordsLayout layout, String file, ProblemLog log) {
    for (int column = 0; column < layout.size(); column++) {
      ColumnTrack track = layout.track(column);
      if (track.own() && track.present()) {
        log.add(ProblemKind.OTHER_COLUMN, Place.whole(file), track.name(), () -> words(track));
      }
    }
  }

  private static Wording words(ColumnTrack track) {
    if (track.recorded() == 0) {
      return new Wording("no value", "", "kept, empty");
    }
    if (track.kind() == ColumnKind.NUMBER) {
      return new Wording(
          "numbers only",
          "",
          "kept as a column of numbers; say \"levels\": true in the dictionary if they are names");
    }
    return new Wording(
        track.notANumber(), "", "kept as a column of names, because not every value is a number");
  }

  static RecordsUnreadable noRows(List<RowSource> sources) {
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
