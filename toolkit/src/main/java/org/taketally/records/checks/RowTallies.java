package org.taketally.records.checks;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.Place;
import org.taketally.records.rows.ColumnTrack;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;

/** Counts kept rows by column, season and site. */
public final class RowTallies {

  private final RecordsLayout layout;
  private final LevelTally seasons = new LevelTally(RecordColumn.SEASON);
  private final LevelTally sites = new LevelTally(RecordColumn.SITE);
  private int[] columns;
  private long grafts;
  private long takes;

  public RowTallies(RecordsLayout layout) {
    this.layout = layout;
  }

  public void add(RecordRow row, Place place) {
    grafts += row.assessed() ? row.grafts() : 0;
    takes += row.assessed() ? row.takes() : 0;
    seasons.add(row);
    sites.add(row);
    for (int column : columns()) {
      int code = row.code(column);
      boolean recorded =
          code != RecordRow.MISSING
              || !Double.isNaN(row.number(column))
              || row.text(column) != null;
      if (recorded) {
        ColumnTrack track = layout.track(column);
        track.countRecorded();
        boolean level = code != RecordRow.MISSING && track.kind() != ColumnKind.DATE;
        if (level && code < track.levels().size()) {
          track.levels().seen(code, place);
        }
      }
    }
  }

  /** The columns the sheets have, which is known when the first row comes. */
  private int[] columns() {
    if (columns == null) {
      columns =
          IntStream.range(0, layout.size()).filter(one -> layout.track(one).present()).toArray();
    }
    return columns;
  }

  /** Grafts assessed. */
  public long grafts() {
    return grafts;
  }

  /** Takes among them. */
  public long takes() {
    return takes;
  }

  public List<ColumnCount> columns(long kept) {
    List<ColumnCount> counts = new ArrayList<>();
    for (int column = 0; column < layout.size(); column++) {
      ColumnTrack track = layout.track(column);
      if (track.present()) {
        int levels = track.kind() == ColumnKind.LEVELS ? track.levels().size() : 0;
        counts.add(
            new ColumnCount(
                track.name(),
                track.kind(),
                track.own(),
                track.recorded(),
                kept - track.recorded(),
                levels));
      }
    }
    return counts;
  }

  public List<LevelCount> seasons() {
    return seasons.counts(layout.track(RecordColumn.SEASON).levels());
  }

  public List<LevelCount> sites() {
    return sites.counts(layout.track(RecordColumn.SITE).levels());
  }
}
