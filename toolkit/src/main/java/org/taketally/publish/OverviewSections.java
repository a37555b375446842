package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeMeaning;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.publish.privacy.JointTake;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.records.columns.RecordColumn;
import org.taketally.wording.season.OverviewWords;
import tech.tablesaw.api.IntColumn;

/** Who took part, what was counted, and what changed. */
final class OverviewSections {

  private final SeasonFacts facts;
  private final OverviewWords words;

  OverviewSections(SeasonFacts facts, OverviewWords words) {
    this.facts = facts;
    this.words = words;
  }

  Section inShort(List<String> points) {
    List<Block> blocks = new ArrayList<>();
    if (!points.isEmpty()) {
      blocks.add(new Callout(points.get(0)));
      blocks.add(Bullets.of(points.subList(1, points.size())));
    }
    return new Section("in-short", words.inShort(), blocks);
  }

  /** How many took, in one sentence. */
  String tookInAll() {
    if (facts.joint().isPresent()) {
      JointTake joint = facts.joint().get();
      return words.tookTogether(joint.grafts(), joint.parts(), joint.part());
    }
    return facts
        .ofSeason(facts.latest())
        .map(count -> words.took(facts.latest(), count))
        .orElseGet(() -> words.took(facts.total()));
  }

  Section whoAndWhat() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraph(who()));
    blocks.add(new Paragraph(words.takeMeans(TakeMeaning.of(facts.records()), unassessed())));
    facts.seasonTable().ifPresent(table -> blocks.add(new Table(seasons(table))));
    return new Section("who-and-what", words.whoAndWhat(), blocks);
  }

  private String who() {
    OptionalInt members =
        facts.evidence().namesMembers()
            ? OptionalInt.of(facts.latestMembers())
            : OptionalInt.empty();
    String took = words.tookPart(members, facts.latestSites(), facts.latest());
    return (took + " " + words.restsOn(facts.total().grafts(), facts.allSeasons())).strip();
  }

  private long unassessed() {
    IntColumn grafts = facts.records().frame().intColumn(RecordColumn.GRAFTS.columnName());
    IntColumn takes = facts.records().frame().intColumn(RecordColumn.TAKES.columnName());
    long sum = 0;
    for (int row = 0; row < takes.size(); row++) {
      sum += takes.isMissing(row) ? grafts.getInt(row) : 0;
    }
    return sum;
  }

  private Grid seasons(PublishedTable table) {
    List<List<String>> rows =
        table.entries().stream()
            .map(entry -> words.seasonRow(entry.levels(), entry.merged(), facts.count(entry)))
            .toList();
    return new Grid(words.seasonsCaption(), words.seasonsHeadings(), rows);
  }

  /** The latest season beside the one before; empty if either may not be shown. */
  Optional<Section> whatChanged() {
    Optional<String> before = facts.previous();
    Optional<TakeCount> then = before.flatMap(facts::ofSeason);
    Optional<TakeCount> now = facts.ofSeason(facts.latest());
    if (then.isEmpty() || now.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Section(
            "what-changed",
            words.changed(before.get()),
            List.of(
                new Paragraph(
                    words.changedFrom(facts.latest(), now.get(), before.get(), then.get())),
                new Paragraph(words.changedLimits()))));
  }
}
