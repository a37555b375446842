package org.taketally.publish;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.taketally.files.FileNames;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Provenance;
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
    Provenance provenance = check.provenance();
    List<Section> sections = new ArrayList<>();
    Callout counts = new Callout(CheckPageWords.counts(provenance));
    sections.add(new Section("in-short", WorkingPageWords.IN_SHORT, List.of(counts)));
    sections.add(section(check, Severity.ERROR, "set-aside"));
    sections.add(section(check, Severity.CHECK, "to-check"));
    sections.add(section(check, Severity.NOTE, "notes"));
    return new CheckPage(
        new Page(
            CheckPageWords.TITLE,
            names(check).apply(String.join(", ", provenance.sources())),
            "",
            sections,
            WorkingPageWords.FOOTER));
  }

  private static Section section(RecordsCheck check, Severity severity, String id) {
    String heading = CheckPageWords.heading(severity);
    List<ProblemSummary.Group> groups =
        check.summary().groups().stream().filter(group -> group.severity() == severity).toList();
    if (groups.isEmpty()) {
      return new Section(id, heading, List.of(new Paragraph(CheckPageWords.NOTHING)));
    }
    UnaryOperator<String> names = names(check);
    List<List<String>> rows =
        groups.stream()
            .limit(MOST)
            .map(CheckPageWords::row)
            .map(row -> row.stream().map(names).toList())
            .toList();
    String caption =
        CheckPageWords.caption(check.summary().count(severity), rows.size(), groups.size());
    Grid grid = new Grid(caption, CheckPageWords.HEADINGS, rows, true);
    return new Section(id, heading, List.of(new Table(grid)));
  }

  /** Files without their folders, where that leaves their names apart. */
  private static UnaryOperator<String> names(RecordsCheck check) {
    List<String> sources = check.provenance().sources();
    Set<String> folders = new LinkedHashSet<>();
    Set<String> names = new HashSet<>();
    for (String source : sources) {
      String name = FileNames.withoutFolder(source);
      folders.add(source.substring(0, source.length() - name.length()));
      names.add(name);
    }
    folders.remove("");
    return names.size() < sources.size()
        ? UnaryOperator.identity()
        : text -> without(folders, text);
  }

  private static String without(Set<String> folders, String text) {
    String shorter = text;
    for (String folder : folders) {
      shorter = shorter.replace(folder, "");
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
