package org.taketally.publish;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.publish.privacy.GraftsByMember;
import org.taketally.publish.privacy.JointTake;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.publish.privacy.PublishedBefore;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.publish.privacy.PublishedTable.Entry;
import org.taketally.publish.privacy.SeasonTables;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.RecordColumn;
import org.taketally.wording.pages.MemberNamesWords;
import org.taketally.wording.pages.RefusalWords;
import org.taketally.wording.season.ClosingWords;

/** The counts of a season page, reduced to what may be published. */
final class SeasonFacts {

  static final String GRAFTER = RecordColumn.GRAFTER.columnName();
  static final String SITE = RecordColumn.SITE.columnName();
  private static final String SEASON = RecordColumn.SEASON.columnName();
  private static final String CULTIVAR = RecordColumn.CULTIVAR.columnName();
  private static final String ROOTSTOCK = RecordColumn.ROOTSTOCK.columnName();

  private final GraftRecords records;
  private final SummaryOptions options;
  private final GraftsByMember evidence;
  private final List<String> seasons;
  private final String season;
  private final SeasonTables tables;
  private final Optional<JointTake> joint;

  SeasonFacts(GraftRecords records, SummaryOptions options) {
    this.records = records;
    this.options = options;
    this.evidence = evidence(List.of(SEASON, CULTIVAR, ROOTSTOCK, SITE));
    List<String> recorded = named(evidence.levels(SEASON));
    String wanted = options.season().orElse(last(recorded));
    if (options.season().isPresent() && !recorded.contains(wanted)) {
      throw new IllegalArgumentException(
          "no season \"%s\" in these records; there are %s".formatted(wanted, recorded));
    }
    SeasonTables asked = tables(wanted);
    this.seasons = asked.whole().isEmpty() ? recorded : within(recorded, asked.whole());
    this.season = seasons.contains(wanted) ? wanted : last(seasons);
    this.tables = season.equals(wanted) ? asked : tables(season);
    this.joint = tables.whole().isEmpty() ? Optional.of(jointTake()) : Optional.empty();
  }

  private SeasonTables tables(String about) {
    return SeasonTables.of(evidence, about, options.rule(), options.before());
  }

  private static List<String> named(List<String> names) {
    return names.stream().filter(name -> !name.isEmpty()).toList();
  }

  private static String last(List<String> names) {
    return names.isEmpty() ? "" : names.get(names.size() - 1);
  }

  private List<String> within(List<String> names, BitSet cells) {
    return names.stream().filter(name -> evidence.level(SEASON, name).intersects(cells)).toList();
  }

  /** What can still be said of few people; the counts of a page can't be shown. */
  private JointTake jointTake() {
    if (!options.before().pages().isEmpty()) {
      throw new NothingToPublish(RefusalWords.besideEarlierPages());
    }
    return JointTake.of(evidence, options.members(), options.rule())
        .orElseThrow(() -> new NothingToPublish(tooFew()));
  }

  /** When a line stands by itself. */
  ClosingWords.Rule rule() {
    PrivacyRule rule = options.rule();
    return new ClosingWords.Rule(
        rule.grafts(), rule.members(), rule.largestShare(), rule.membersForExtremes());
  }

  private String tooFew() {
    long grafts = evidence.count(evidence.all()).grafts();
    String refusal =
        evidence.namesMembers()
            ? RefusalWords.tooFew(grafts, evidence.members(evidence.all()), rule())
            : RefusalWords.nobodyNamed(grafts);
    return Stream.concat(Stream.of(refusal), aboutNames().stream())
        .collect(Collectors.joining(". "));
  }

  /** How names were counted as members, for whoever publishes. */
  List<String> aboutNames() {
    return MemberNamesWords.of(evidence.names().together(), evidence.names().nobody());
  }

  /** Who grafted what, by columns of the records; those not recorded are left out. */
  GraftsByMember evidence(List<String> columns) {
    return new GraftsByMember(cells(columns), GRAFTER);
  }

  /** Cells by grafter and columns of the records; those not recorded are left out. */
  Cells cells(List<String> columns) {
    List<String> known = records.frame().columnNames();
    List<String> wanted =
        Stream.concat(Stream.of(GRAFTER), columns.stream()).filter(known::contains).toList();
    return CellsOf.records(records, wanted);
  }

  private BitSet latestCells() {
    BitSet cells = season.isEmpty() ? shown() : evidence.level(SEASON, season);
    cells.and(shown());
    return cells;
  }

  /** The grafts the page is about. */
  private BitSet shown() {
    return joint.isPresent() ? evidence.all() : (BitSet) tables.whole().clone();
  }

  /** The take of all together, in coarse words, where no counts may be shown. */
  Optional<JointTake> joint() {
    return joint;
  }

  /** Grafts added since to seasons published before, held back until more come with them. */
  long heldBack() {
    return tables.late().isEmpty() ? 0 : evidence.count(tables.late()).grafts();
  }

  /** Seasons left out because what was published of them can't be followed any more. */
  List<String> changedSeasons() {
    return tables.changedSeasons();
  }

  /** What has been published once this page is. */
  PublishedBefore published() {
    return joint.isPresent()
        ? options.before()
        : options.before().and(tables.asPublished(evidence, season));
  }

  GraftRecords records() {
    return records;
  }

  SummaryOptions options() {
    return options;
  }

  GraftsByMember evidence() {
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
    return evidence.count(shown());
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
    return table(SeasonTables.LATEST);
  }

  private Optional<PublishedTable> table(String name) {
    return tables.tables().stream().filter(t -> t.name().equals(name)).findFirst();
  }

  /** Members behind the latest season, or all if there is none. */
  int latestMembers() {
    return evidence.members(latestCells());
  }

  /** Sites of the latest season, or all if there is none. */
  long latestSites() {
    BitSet cells = latestCells();
    return evidence.levels(SITE).stream()
        .filter(site -> !site.isEmpty() && evidence.level(SITE, site).intersects(cells))
        .count();
  }
}
