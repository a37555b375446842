package org.taketally.publish;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.taketally.answers.Words;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.publish.privacy.Disclosure;
import org.taketally.publish.privacy.Disclosure.Request;
import org.taketally.publish.privacy.Evidence;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.publish.privacy.PublishedTable.Entry;
import org.taketally.records.GraftRecords;

/** The counts of a season page, reduced to what may be published. */
final class SeasonFacts {

  static final String GRAFTER = "grafter";
  static final String SITE = "site";
  private static final String SEASON = "season";
  private static final String CULTIVAR = "cultivar";
  private static final String ROOTSTOCK = "rootstock";

  private final GraftRecords records;
  private final SummaryOptions options;
  private final Evidence evidence;
  private final List<String> seasons;
  private final String season;
  private final List<PublishedTable> tables;

  SeasonFacts(GraftRecords records, SummaryOptions options) {
    this.records = records;
    this.options = options;
    this.evidence = evidence(List.of(SEASON, CULTIVAR, ROOTSTOCK, SITE));
    this.seasons = evidence.levels(SEASON).stream().filter(s -> !s.isEmpty()).toList();
    this.season = season();
    BitSet all = evidence.all();
    requireEnough(all);
    this.tables =
        new Disclosure(evidence, options.rule())
            .tables(
                List.of(
                    new Request(SEASON, SEASON, all),
                    new Request(CULTIVAR, CULTIVAR, all),
                    new Request(ROOTSTOCK, ROOTSTOCK, all),
                    new Request("latest", CULTIVAR, latestCells())));
  }

  /** Who grafted what, by columns of the records; those not recorded are left out. */
  Evidence evidence(List<String> columns) {
    return new Evidence(cells(columns), GRAFTER);
  }

  /** Cells by grafter and columns of the records; those not recorded are left out. */
  Cells cells(List<String> columns) {
    List<String> known = records.frame().columnNames();
    List<String> wanted =
        Stream.concat(Stream.of(GRAFTER), columns.stream()).filter(known::contains).toList();
    return CellsOf.records(records, wanted);
  }

  private String season() {
    if (options.season().isEmpty()) {
      return seasons.isEmpty() ? "" : seasons.get(seasons.size() - 1);
    }
    String wanted = options.season().get();
    if (!seasons.contains(wanted)) {
      throw new IllegalArgumentException(
          "no season \"%s\" in these records; there are %s".formatted(wanted, seasons));
    }
    return wanted;
  }

  private BitSet latestCells() {
    return season.isEmpty() ? new BitSet() : evidence.level(SEASON, season);
  }

  private void requireEnough(BitSet all) {
    PrivacyRule rule = options.rule();
    if (evidence.allows(all, rule)) {
      return;
    }
    String found =
        evidence.namesMembers()
            ? "%s by %s"
                .formatted(
                    Words.count(grafts(all), "assessed graft"),
                    Words.count(evidence.members(all), "member"))
            : Words.count(grafts(all), "assessed graft") + " by nobody named";
    throw new NothingToPublish(
        ("a page would tell on its members: these records hold %s, and a page needs at least %d"
                + " grafts by %d members, none with more than %s of them; add more records, or show"
                + " the analysis page only to those who made the grafts")
            .formatted(found, rule.grafts(), rule.members(), Words.percent(rule.largestShare())));
  }

  private long grafts(BitSet group) {
    return group.isEmpty() ? 0 : evidence.count(group).grafts();
  }

  GraftRecords records() {
    return records;
  }

  SummaryOptions options() {
    return options;
  }

  Evidence evidence() {
    return evidence;
  }

  /** The season the page is about; empty if the records have none. */
  String latest() {
    return season;
  }

  /** The season before it. */
  Optional<String> previous() {
    int place = seasons.indexOf(season);
    return place > 0 ? Optional.of(seasons.get(place - 1)) : Optional.empty();
  }

  List<String> allSeasons() {
    return seasons;
  }

  TakeCount total() {
    return evidence.count(evidence.all());
  }

  TakeCount count(Entry entry) {
    return evidence.count(entry.cells());
  }

  /** Counts of a season, if it may be shown by itself. */
  Optional<TakeCount> ofSeason(String name) {
    return seasonTable().flatMap(table -> table.of(name)).map(this::count);
  }

  Optional<PublishedTable> seasonTable() {
    return table(SEASON);
  }

  Optional<PublishedTable> cultivarTable() {
    return table(CULTIVAR);
  }

  Optional<PublishedTable> rootstockTable() {
    return table(ROOTSTOCK);
  }

  /** Cultivars in the latest season only. */
  Optional<PublishedTable> latestTable() {
    return table("latest");
  }

  private Optional<PublishedTable> table(String name) {
    return tables.stream().filter(t -> t.name().equals(name)).findFirst();
  }

  /** Members behind the latest season, or all if there is none. */
  int latestMembers() {
    return evidence.members(season.isEmpty() ? evidence.all() : latestCells());
  }

  /** Sites of the latest season, or all if there is none. */
  long latestSites() {
    BitSet cells = season.isEmpty() ? evidence.all() : latestCells();
    return evidence.levels(SITE).stream()
        .filter(site -> !site.isEmpty() && evidence.level(SITE, site).intersects(cells))
        .count();
  }
}
