package org.taketally.watch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/**
 * Rows of a season put together by session: grafted on one day at one place by one hand, counted on
 * one day. Grafts of a session share luck, so that the chart steps by session and not by row.
 *
 * @param counted one a session, in the order of counting
 * @param lots the same with what was expected before any count
 */
record Sessions(List<WatchedLot> counted, List<SeasonChart.Lot> lots) {

  static Sessions of(SeasonLots season, List<LotExpectation> rows) {
    Map<String, List<Integer>> members = new TreeMap<>();
    for (int i = 0; i < rows.size(); i++) {
      Map<String, String> said = season.values().get(i);
      String session =
          String.join(
              " / ",
              season.counted().get(i).counted().toString(),
              said.getOrDefault(
                  DerivedColumn.GRAFTING_DAY.columnName(),
                  said.getOrDefault(RecordColumn.GRAFT_DATE.columnName(), "")),
              said.getOrDefault(RecordColumn.GRAFTER.columnName(), ""));
      members.computeIfAbsent(session, key -> new ArrayList<>()).add(i);
    }
    List<WatchedLot> counted = new ArrayList<>();
    List<SeasonChart.Lot> lots = new ArrayList<>();
    members.forEach(
        (session, rowsOfIt) -> {
          int grafts = rowsOfIt.stream().mapToInt(i -> season.counted().get(i).grafts()).sum();
          int takes = rowsOfIt.stream().mapToInt(i -> season.counted().get(i).takes()).sum();
          counted.add(
              new WatchedLot(
                  session,
                  season.counted().get(rowsOfIt.get(0)).counted(),
                  grafts,
                  takes,
                  new LinkedHashMap<>()));
          lots.add(new SeasonChart.Lot(grafts, together(season, rows, rowsOfIt, grafts)));
        });
    return new Sessions(counted, lots);
  }

  /** The mean of the rows' takes, and their mean correlation spread over the session. */
  private static LotExpectation together(
      SeasonLots season, List<LotExpectation> rows, List<Integer> members, int grafts) {
    double[] takes = new double[rows.get(0).seasons()];
    double own = 0;
    for (int i : members) {
      double share = (double) season.counted().get(i).grafts() / grafts;
      double[] row = rows.get(i).takes();
      Arrays.setAll(takes, d -> takes[d] + share * row[d]);
      own += share * share * rows.get(i).correlation();
    }
    return new LotExpectation(takes, own);
  }

  int[] takes() {
    return counted.stream().mapToInt(WatchedLot::takes).toArray();
  }

  /** The sessions again and again until they make up so many grafts; all of them at least once. */
  List<SeasonChart.Lot> repeatedTo(long grafts) {
    List<SeasonChart.Lot> all = new ArrayList<>(lots);
    long made = lots.stream().mapToLong(SeasonChart.Lot::grafts).sum();
    for (int i = 0; made < grafts; i = (i + 1) % lots.size()) {
      all.add(lots.get(i));
      made += lots.get(i).grafts();
    }
    return all;
  }
}
