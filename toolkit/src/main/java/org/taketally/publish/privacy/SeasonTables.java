package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.publish.privacy.Disclosure.Request;
import org.taketally.publish.privacy.PublishedBefore.EarlierPage;
import org.taketally.publish.privacy.PublishedBefore.Kind;
import org.taketally.publish.privacy.PublishedBefore.Line;
import org.taketally.records.columns.RecordColumn;

/**
 * The counts of a season page that may be published beside each other and beside earlier pages.
 *
 * @param whole the grafts whose counts the page shows; empty if none may be shown
 * @param late grafts of seasons published before that were added since and are held back
 * @param tables seasons, cultivars, rootstocks, and cultivars of the season the page is about
 * @param changedSeasons seasons left out because their counts have changed since they were
 *     published, in a way that can't be followed
 */
public record SeasonTables(
    BitSet whole, BitSet late, List<PublishedTable> tables, List<String> changedSeasons) {

  /** Name of the table of cultivars in the season the page is about. */
  public static final String LATEST = "latest";

  private static final String SEASON = RecordColumn.SEASON.columnName();
  private static final String CULTIVAR = RecordColumn.CULTIVAR.columnName();
  private static final String ROOTSTOCK = RecordColumn.ROOTSTOCK.columnName();

  /**
   * The tables for some records.
   *
   * @param evidence cells by member, season, cultivar and rootstock, as far as recorded
   * @param season the season the page is about; empty if the records have none
   * @param rule thresholds
   * @param before what has been published already
   * @return what may be shown; an empty whole if nothing may
   */
  public static SeasonTables of(
      GraftsByMember evidence, String season, PrivacyRule rule, PublishedBefore before) {
    EarlierGrafts earlier = new EarlierGrafts(evidence);
    List<PublishedTable> known = new ArrayList<>();
    BitSet late = new BitSet();
    boolean waits = false;
    BitSet unclear = new BitSet();
    List<String> changed = new ArrayList<>();
    for (EarlierPage page : before.pages()) {
      Optional<EarlierGrafts.Found> found = earlier.find(page);
      found.ifPresent(f -> known.addAll(f.tables()));
      found.ifPresent(f -> late.or(f.late()));
      waits |= found.filter(f -> earlier.lateMayBeOfTwo(page, f.late())).isPresent();
      if (found.isEmpty()) {
        unclear.or(earlier.mayBeAbout(page));
        page.seasons().stream().filter(s -> !changed.contains(s)).forEach(changed::add);
      }
    }
    Disclosure disclosure = new Disclosure(evidence, rule);
    BitSet whole =
        wholes(evidence, known, late, unclear)
            .skip(waits ? 1 : 0)
            .filter(cells -> !cells.isEmpty() && disclosure.allowsWhole(cells, known))
            .findFirst()
            .orElseGet(BitSet::new);
    late.andNot(whole);
    List<PublishedTable> together = new ArrayList<>(known);
    together.add(PublishedTable.ofAll(whole));
    List<PublishedTable> tables =
        whole.isEmpty()
            ? List.of()
            : disclosure.tables(requests(evidence, season, whole), together);
    return new SeasonTables(whole, late, tables, changed);
  }

  /**
   * What the page might be about: everything first, without late results, without new seasons;
   * never what an earlier page may have been about that can't be followed.
   */
  private static Stream<BitSet> wholes(
      GraftsByMember evidence, List<PublishedTable> known, BitSet late, BitSet unclear) {
    BitSet all = evidence.all();
    all.andNot(unclear);
    BitSet withoutLate = (BitSet) all.clone();
    withoutLate.andNot(late);
    BitSet asBefore = new BitSet();
    known.forEach(table -> table.entries().forEach(entry -> asBefore.or(entry.cells())));
    asBefore.and(withoutLate);
    return Stream.of(all, withoutLate, asBefore);
  }

  private static List<Request> requests(GraftsByMember evidence, String season, BitSet whole) {
    List<Request> requests = new ArrayList<>();
    for (String column : List.of(SEASON, CULTIVAR, ROOTSTOCK)) {
      requests.add(new Request(column, column, whole));
    }
    if (!season.isEmpty()) {
      BitSet latest = evidence.level(SEASON, season);
      latest.and(whole);
      requests.add(new Request(LATEST, CULTIVAR, latest));
    }
    return requests;
  }

  /**
   * What this page publishes, to be checked against by later ones.
   *
   * @param evidence the same as for making it
   * @param season the season the page is about
   * @return its lines, the whole first
   */
  public EarlierPage asPublished(GraftsByMember evidence, String season) {
    List<String> all = seasonsOf(evidence, whole);
    List<Line> lines = new ArrayList<>();
    lines.add(line(evidence, PublishedTable.ALL, "", all, new Entry(Kind.ALL, "", whole)));
    for (PublishedTable table : tables) {
      boolean latest = table.name().equals(LATEST);
      String column = latest ? CULTIVAR : table.name();
      List<String> seasons = latest ? List.of(season) : all;
      for (PublishedTable.Entry entry : table.entries()) {
        Kind kind = entry.merged() ? Kind.OTHERS : Kind.LEVEL;
        String level = entry.merged() ? "" : entry.levels().get(0);
        lines.add(
            line(evidence, table.name(), column, seasons, new Entry(kind, level, entry.cells())));
      }
    }
    return new EarlierPage(lines);
  }

  private record Entry(Kind kind, String level, BitSet cells) {}

  private static Line line(
      GraftsByMember evidence, String table, String column, List<String> seasons, Entry entry) {
    TakeCount count = evidence.count(entry.cells());
    return new Line(
        table, column, seasons, entry.kind(), entry.level(), count.grafts(), count.takes());
  }

  private static List<String> seasonsOf(GraftsByMember evidence, BitSet cells) {
    List<String> seasons =
        evidence.levels(SEASON).stream()
            .filter(season -> evidence.level(SEASON, season).intersects(cells))
            .toList();
    return seasons.isEmpty() ? List.of("") : seasons;
  }
}
