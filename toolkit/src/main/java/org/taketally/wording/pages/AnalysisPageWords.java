package org.taketally.wording.pages;

import java.util.List;
import org.taketally.answers.counts.TakeMeaning;
import org.taketally.model.FitWarning;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Provenance;
import org.taketally.wording.TakeMeaningWords;
import org.taketally.wording.Words;

/** The page of all answers in words. */
public final class AnalysisPageWords {

  /** Title of the page. */
  public static final String TITLE = "What the graft records say";

  /** Warning above everything. */
  public static final String STAMP = "Not for publication";

  /** Heading of the tables of an answer. */
  public static final String NUMBERS = "The numbers";

  /** Heading of questions without an answer. */
  public static final String NOT_ANSWERED = "What these records don't answer";

  /** Heading of what the answers rest on. */
  public static final String BEHIND = "What it rests on";

  private AnalysisPageWords() {}

  /**
   * What the page is.
   *
   * @param grafts assessed
   * @return two sentences
   */
  public static String lead(long grafts) {
    return "Everything these records answer, from %s. It names cultivars, stocks and small groups that a"
            .formatted(Words.count(grafts, "assessed graft"))
        + " published page would not.";
  }

  /**
   * What was read, and what a take is in it.
   *
   * @param records as read
   * @return a paragraph each
   */
  public static List<String> restsOn(GraftRecords records) {
    Provenance provenance = records.provenance();
    String read =
        "%s read, %s used, %s set aside; %s assessed, %s of them took."
            .formatted(
                Words.count(provenance.rowsRead(), "row"),
                Words.count(provenance.rowsKept()),
                Words.count(provenance.rowsSetAside()),
                Words.count(records.grafts(), "graft"),
                Words.count(records.takes()));
    return List.of(read, TakeMeaningWords.of(TakeMeaning.of(records)));
  }

  /**
   * That the fit raised no warning.
   *
   * @return a sentence
   */
  public static String noWarning() {
    return "The fit raised no warning.";
  }

  /**
   * A warning of the fit.
   *
   * @param warning any
   * @return a sentence or two
   */
  public static String warning(FitWarning warning) {
    return "The fit warns: " + warning.sentence();
  }
}
