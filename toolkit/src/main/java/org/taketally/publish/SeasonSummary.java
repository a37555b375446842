package org.taketally.publish;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.answers.advice.SeasonAdviceCalculator;
import org.taketally.figure.FigurePng;
import org.taketally.model.TakeFit;
import org.taketally.publish.privacy.PublishedBefore;
import org.taketally.records.GraftRecords;
import org.taketally.wording.season.SeasonWords;

/**
 * The season page for members, in plain language, reduced to what may be published: no member, site
 * or note, no line that tells on a member, nothing that comes back by subtraction.
 */
public final class SeasonSummary {

  private final SeasonPage season;
  private final Page page;
  private final SeasonCsv csv;
  private final PublishedBefore published;
  private final List<String> aboutNames;

  private SeasonSummary(
      SeasonPage season, SeasonCsv csv, PublishedBefore published, List<String> aboutNames) {
    this.season = season;
    this.page = season.page();
    this.csv = csv;
    this.published = published;
    this.aboutNames = List.copyOf(aboutNames);
  }

  /**
   * The page of some records and their analysis.
   *
   * @param records as read
   * @param analysis answers to them; what is missing is left out of the page
   * @param options who publishes, which season, which privacy rule
   * @return the page
   * @throws NothingToPublish if even all records together would tell on members
   * @throws IllegalArgumentException if the records lack the season asked for, or the analysis was
   *     asked for another coverage than 0.95
   */
  public static SeasonSummary of(GraftRecords records, Analysis analysis, SummaryOptions options) {
    requireCoverage(analysis.options());
    List<Answer> answers = analysis.answers();
    SeasonAdvice advice =
        SeasonAdviceCalculator.of(
            analysis.fit(), answers, HandsRecorded.in(records, analysis.fit()), analysis.options());
    return of(records, answers, Optional.of(analysis.fit()), advice, options);
  }

  /** Members read one explanation of "likely", which names this coverage. */
  private static void requireCoverage(AnswerOptions asked) {
    double explained = AnswerOptions.defaults().coverage();
    if (asked.coverage() != explained) {
      throw new IllegalArgumentException(
          "the season page explains ranges that hold %s of the time, this analysis was asked for %s; analyse without withCoverage"
              .formatted(explained, asked.coverage()));
    }
  }

  /**
   * The page of some records and any answers to them.
   *
   * @param records as read
   * @param found answers; kinds the page has no place for are ignored
   * @param options who publishes, which season, which privacy rule
   * @return the page
   * @throws NothingToPublish if even all records together would tell on members
   * @throws IllegalArgumentException if the records lack the season asked for
   */
  public static SeasonSummary of(GraftRecords records, List<Answer> found, SummaryOptions options) {
    return of(records, found, SeasonAdvice.nothing(), options);
  }

  /**
   * The page of some records, any answers to them, and advice.
   *
   * @param records as read
   * @param found answers; kinds the page has no place for are ignored
   * @param advice for next season; what would tell on too few is left out
   * @param options who publishes, which season, which privacy rule
   * @return the page
   * @throws NothingToPublish if even all records together would tell on members
   * @throws IllegalArgumentException if the records lack the season asked for
   */
  public static SeasonSummary of(
      GraftRecords records, List<Answer> found, SeasonAdvice advice, SummaryOptions options) {
    return of(records, found, Optional.empty(), advice, options);
  }

  private static SeasonSummary of(
      GraftRecords records,
      List<Answer> found,
      Optional<TakeFit> fit,
      SeasonAdvice advice,
      SummaryOptions options) {
    SeasonFacts facts = new SeasonFacts(records, options);
    PublicAnswers answers = new PublicAnswers(found, fit, advice, facts);
    SeasonPage page = new SeasonPage(facts, answers, SeasonWords.in(options.language()));
    return new SeasonSummary(
        page, new SeasonCsv(facts, answers), facts.published(), facts.aboutNames());
  }

  /**
   * As one file of HTML: figures inside, no script, nothing fetched; it prints on paper.
   *
   * @return the page
   */
  public String html() {
    return PageWriter.html(page);
  }

  /**
   * The most important of it on one sheet of A4 or Letter to print, as one file of HTML.
   *
   * @return the sheet
   */
  public String handout() {
    return PageWriter.write(
        "handout.html.mustache",
        Map.of("handout", season.handout(), "style", PageWriter.resource("handout.css")));
  }

  /**
   * How names of grafters were counted as members, where that isn't plain. Only for whoever
   * publishes: it holds names.
   *
   * @return sentences; none if each name stands for a member of its own
   */
  public List<String> aboutNames() {
    return aboutNames;
  }

  /**
   * What was found in a few sentences, the most important first.
   *
   * @return at least one
   */
  public List<String> inShort() {
    return season.inShort();
  }

  /**
   * The figures as pictures for newsletters and slides, with nothing on them that the page holds
   * back.
   *
   * @return PNG files by name, without the ending
   */
  public Map<String, byte[]> pictures() {
    Map<String, byte[]> pictures = new LinkedHashMap<>();
    season.figures().entrySet().parallelStream()
        .map(figure -> Map.entry(figure.getKey(), FigurePng.of(figure.getValue())))
        .forEachOrdered(drawn -> pictures.put(drawn.getKey(), drawn.getValue()));
    return pictures;
  }

  /**
   * As Markdown: texts and tables, without figures.
   *
   * @return the page
   */
  public String markdown() {
    return PageWriter.markdown(page);
  }

  /**
   * The published numbers as CSV with a header, one row per line of the page's tables.
   *
   * @return lines ending in a line feed
   */
  public String csv() {
    return csv.write();
  }

  /**
   * What has been published once this page is: to be kept, and given to {@link
   * SummaryOptions#before} for the next page.
   *
   * @return counts only, no names of people or places
   */
  public PublishedBefore published() {
    return published;
  }
}
