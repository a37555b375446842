package org.taketally.publish;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.taketally.files.FileNames;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Severity;
import org.taketally.wording.pages.CheckPageWords;
import org.taketally.wording.pages.WorkingPageWords;

/** What is wrong or worth a look in some records, for whoever repairs them. */
public final class CheckPage {

  private static final int MOST = 500;

  private final Page page;

  private CheckPage(Page page) {
    this.page = page;
  }

  /**
   * The page of some records.
   *
   * @param records as read
   * @return the page
   */
  public static CheckPage of(GraftRecords records) {
    return of(records.check());
  }

  /**
   * The page of records that were only looked through.
   *
   * @param check what reading brought to light
   * @return the page
   */
  public static CheckPage of(RecordsCheck check) {
    return of(List.of(check), CheckPageWords.counts(check.provenance()));
  }

  /**
   * The page of records and of repeated counts of them.
   *
   * @param records what reading them brought to light
   * @param counts what reading the counts brought to light
   * @return the page
   */
  public static CheckPage of(RecordsCheck records, RecordsCheck counts) {
    return of(
        List.of(records, counts), CheckPageWords.counts(records.provenance(), counts.provenance()));
  }

  private static CheckPage of(List<RecordsCheck> checks, String counts) {
    ProblemSummary problems =
        checks.stream()
            .map(RecordsCheck::summary)
            .reduce(new ProblemSummary(List.of()), ProblemSummary::and);
    List<String> sources =
        checks.stream().flatMap(check -> check.provenance().sources().stream()).distinct().toList();
    UnaryOperator<String> names = names(sources, problems);
    List<Section> sections = new ArrayList<>();
    Callout inShort = new Callout(counts);
    sections.add(new Section("in-short", WorkingPageWords.IN_SHORT, List.of(inShort)));
    sections.add(section(problems, names, Severity.ERROR, "set-aside"));
    sections.add(section(problems, names, Severity.CHECK, "to-check"));
    sections.add(section(problems, names, Severity.NOTE, "notes"));
    return new CheckPage(
        new Page(
            CheckPageWords.TITLE,
            names.apply(String.join(", ", sources)),
            "",
            sections,
            WorkingPageWords.FOOTER));
  }

  private static Section section(
      ProblemSummary problems, UnaryOperator<String> names, Severity severity, String id) {
    String heading = CheckPageWords.heading(severity);
    List<ProblemSummary.Group> groups =
        problems.groups().stream().filter(group -> group.severity() == severity).toList();
    if (groups.isEmpty()) {
      return new Section(id, heading, List.of(new Paragraph(CheckPageWords.NOTHING)));
    }
    List<List<String>> rows =
        groups.stream()
            .limit(MOST)
            .map(CheckPageWords::row)
            .map(row -> row.stream().map(names).toList())
            .toList();
    String caption = CheckPageWords.caption(problems.count(severity), rows.size(), groups.size());
    Grid grid = new Grid(caption, CheckPageWords.HEADINGS, rows, true);
    return new Section(id, heading, List.of(new Table(grid)));
  }

  /**
   * Files without their folders, where that leaves their names apart; whole paths only, so that
   * nothing typed in a sheet is changed.
   */
  private static UnaryOperator<String> names(List<String> sources, ProblemSummary problems) {
    List<String> files =
        Stream.concat(sources.stream(), problems.groups().stream().map(ProblemSummary.Group::file))
            .distinct()
            .filter(file -> !file.isEmpty())
            .sorted(Comparator.comparingInt(String::length).reversed())
            .toList();
    return files.stream().map(FileNames::withoutFolder).distinct().count() < files.size()
        ? UnaryOperator.identity()
        : text -> named(files, text);
  }

  private static String named(List<String> files, String text) {
    String shorter = text;
    for (String file : files) {
      shorter = shorter.replace(file, FileNames.withoutFolder(file));
    }
    return shorter;
  }

  /**
   * As one file of HTML.
   *
   * @return the page
   */
  public String html() {
    return PageWriter.html(page);
  }
}
