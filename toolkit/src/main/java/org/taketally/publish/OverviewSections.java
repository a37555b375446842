package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeDifference;
import org.taketally.answers.counts.TakeMeaning;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.publish.privacy.PublishedTable.Entry;
import org.taketally.terms.Interval;
import org.taketally.wording.TakeMeaningWords;
import org.taketally.wording.Words;
import tech.tablesaw.api.IntColumn;

/** Who took part, what was counted, and what changed. */
final class OverviewSections {

  private static final double LEVEL = 0.95;

  private final SeasonFacts facts;

  OverviewSections(SeasonFacts facts) {
    this.facts = facts;
  }

  Section inShort(List<String> points) {
    List<Block> blocks = new ArrayList<>();
    if (!points.isEmpty()) {
      blocks.add(new Callout(points.get(0)));
      blocks.add(Bullets.of(points.subList(1, points.size())));
    }
    return new Section("in-short", "In short", blocks);
  }

  /** How many took, in one sentence. */
  String tookInAll() {
    if (facts.joint().isPresent()) {
      return JointWords.took(facts.joint().get());
    }
    Optional<TakeCount> latest = facts.ofSeason(facts.latest());
    if (latest.isPresent()) {
      return "In %s, %s of %s took, %s."
          .formatted(
              facts.latest(),
              Words.count(latest.get().takes()),
              Words.count(latest.get().grafts(), "graft"),
              PlainWords.inTen(latest.get().rate()));
    }
    TakeCount total = facts.total();
    return "%s of %s took, %s."
        .formatted(
            Words.count(total.takes()),
            Words.count(total.grafts(), "graft"),
            PlainWords.inTen(total.rate()));
  }

  Section whoAndWhat() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraph(who()));
    blocks.add(new Paragraph(takeDefinition()));
    facts.seasonTable().ifPresent(table -> blocks.add(new Table(seasons(table))));
    return new Section("who-and-what", "Who took part, and what was counted", blocks);
  }

  private String who() {
    List<String> parts = new ArrayList<>();
    if (facts.evidence().namesMembers()) {
      parts.add(Words.count(facts.latestMembers(), "member"));
    }
    if (facts.latestSites() > 0) {
      parts.add(Words.count(facts.latestSites(), "site"));
    }
    String took =
        parts.isEmpty()
            ? ""
            : String.join(" at ", parts)
                + (facts.latest().isEmpty()
                    ? " took part. "
                    : " took part in " + facts.latest() + ". ");
    String seasons =
        facts.allSeasons().isEmpty() ? "" : " of " + PlainWords.seasons(facts.allSeasons());
    return took
        + "All results below rest on %s%s; they say how grafts took here, not how they would take everywhere."
            .formatted(Words.count(facts.total().grafts(), "assessed graft"), seasons);
  }

  private String takeDefinition() {
    String text = TakeMeaningWords.of(TakeMeaning.of(facts.records()));
    long lost = unassessed();
    return lost == 0
        ? text
        : text
            + " %s never counted, for example because a label was lost: left out here, not called failed."
                .formatted(Words.count(lost, "graft") + (lost == 1 ? " was" : " were"));
  }

  private long unassessed() {
    IntColumn grafts = facts.records().frame().intColumn("grafts");
    IntColumn takes = facts.records().frame().intColumn("takes");
    long sum = 0;
    for (int row = 0; row < takes.size(); row++) {
      sum += takes.isMissing(row) ? grafts.getInt(row) : 0;
    }
    return sum;
  }

  private Grid seasons(PublishedTable table) {
    List<List<String>> rows = new ArrayList<>();
    for (Entry entry : table.entries()) {
      TakeCount count = facts.count(entry);
      rows.add(
          List.of(
              PlainWords.name(entry, "other seasons"),
              Words.count(count.grafts()),
              Words.count(count.takes()),
              PlainWords.counted(count)));
    }
    return new Grid(
        "Grafts and takes by season, as counted",
        List.of("Season", "Grafts", "Took", "Take (likely range)"),
        rows);
  }

  /** The latest season beside the one before; empty if either may not be shown. */
  Optional<Section> whatChanged() {
    Optional<String> before = facts.previous();
    Optional<TakeCount> then = before.flatMap(facts::ofSeason);
    Optional<TakeCount> now = facts.ofSeason(facts.latest());
    if (then.isEmpty() || now.isEmpty()) {
      return Optional.empty();
    }
    Interval range = TakeDifference.newcombe(now.get(), then.get(), LEVEL);
    String text =
        "Take was %s in %s and %s in %s: %s. %s"
            .formatted(
                Words.percent(now.get().rate()),
                facts.latest(),
                Words.percent(then.get().rate()),
                before.get(),
                PlainWords.change(now.get().rate() - then.get().rate(), range),
                range.contains(0)
                    ? "That could be chance."
                    : "Counted one by one, chance alone would hardly give that; but grafts made"
                        + " together take or fail together, so seasons differ by chance more than"
                        + " this range says.");
    return Optional.of(
        new Section(
            "what-changed",
            "What changed since " + before.get(),
            List.of(
                new Paragraph(text),
                new Paragraph(
                    "This compares plain counts. Other cultivars, other hands, other budwood and"
                        + " other weather came together in the two seasons, so it doesn't say what"
                        + " made the difference."))));
  }
}
