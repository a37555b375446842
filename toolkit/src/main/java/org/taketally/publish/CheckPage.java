package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.records.GraftRecords;
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
    Provenance provenance = records.provenance();
    String counts =
        "%s read: %s used, %s set aside."
            .formatted(
                Words.count(provenance.rowsRead(), "row"),
                Words.count(provenance.rowsKept()),
                Words.count(provenance.rowsSetAside()));
    List<Section> sections = new ArrayList<>();
    sections.add(new Section("in-short", "In short", List.of(new Callout(counts))));
    sections.add(section(records, Severity.ERROR, "set-aside", "Set aside until repaired"));
    sections.add(section(records, Severity.CHECK, "to-check", "Used, but please look"));
    sections.add(section(records, Severity.NOTE, "notes", "Good to know"));
    return new CheckPage(
        new Page(
            "Can these records be trusted?",
            String.join(", ", provenance.sources()),
            "",
            sections,
            "Made with Taketally."));
  }

  private static Section section(
      GraftRecords records, Severity severity, String id, String heading) {
    List<Problem> all =
        records.problems().stream().filter(problem -> problem.severity() == severity).toList();
    if (all.isEmpty()) {
      return new Section(id, heading, List.of(new Paragraph("Nothing.")));
    }
    List<List<String>> rows = all.stream().limit(MOST).map(CheckPage::row).toList();
    String caption =
        rows.size() == all.size()
            ? Words.count(all.size(), "problem")
            : "the first %s of %s"
                .formatted(Words.count(rows.size()), Words.count(all.size(), "problem"));
    List<String> headings = List.of("Place", "Column", "Found", "Expected", "What to do");
    return new Section(id, heading, List.of(new Table(new Grid(caption, headings, rows, true))));
  }

  private static List<String> row(Problem problem) {
    String place = problem.line() > 0 ? problem.file() + " line " + problem.line() : problem.file();
    return List.of(place, problem.column(), problem.found(), problem.expected(), problem.remedy());
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
