package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import org.taketally.terms.Severity;
import org.taketally.wording.Words;

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
    Provenance provenance = check.provenance();
    String counts =
        "%s read: %s used, %s set aside."
            .formatted(
                Words.count(provenance.rowsRead(), "row"),
                Words.count(provenance.rowsKept()),
                Words.count(provenance.rowsSetAside()));
    List<Section> sections = new ArrayList<>();
    sections.add(new Section("in-short", "In short", List.of(new Callout(counts))));
    sections.add(section(check, Severity.ERROR, "set-aside", "Set aside until repaired"));
    sections.add(section(check, Severity.CHECK, "to-check", "Used, but please look"));
    sections.add(section(check, Severity.NOTE, "notes", "Good to know"));
    return new CheckPage(
        new Page(
            "Can these records be trusted?",
            String.join(", ", provenance.sources()),
            "",
            sections,
            "Made with Taketally."));
  }

  private static Section section(RecordsCheck check, Severity severity, String id, String heading) {
    List<ProblemSummary.Group> groups =
        check.summary().groups().stream().filter(group -> group.severity() == severity).toList();
    if (groups.isEmpty()) {
      return new Section(id, heading, List.of(new Paragraph("Nothing.")));
    }
    List<List<String>> rows = groups.stream().limit(MOST).map(CheckPage::row).toList();
    String caption = Words.count(check.summary().count(severity), "problem");
    if (rows.size() < groups.size()) {
      caption += ", the first %s of %,d kinds".formatted(Words.count(rows.size()), groups.size());
    }
    List<String> headings = List.of("Place", "Column", "Found", "Expected", "What to do");
    return new Section(id, heading, List.of(new Table(new Grid(caption, headings, rows, true))));
  }

  /** Equal problems in one line: how often, and the first few. */
  private static List<String> row(ProblemSummary.Group group) {
    Problem first = group.first().get(0);
    if (group.count() == 1) {
      String place = first.line() > 0 ? first.file() + " line " + first.line() : first.file();
      return List.of(place, first.column(), first.found(), first.expected(), first.remedy());
    }
    return List.of(
        group.file(), group.column(), group.examples(), first.expected(), first.remedy());
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
