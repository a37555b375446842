package org.taketally.records.rows;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;

/**
 * The columns of records read together, by number: first those of {@link RecordColumn}, then those
 * of {@link DerivedColumn}, then others in the order met.
 */
public final class RecordsLayout {

  private static final int RECORD_COLUMNS = RecordColumn.values().length;

  /** Never read from a sheet, though they have a name. */
  static final Set<String> WORKED_OUT =
      Set.of(
          DerivedColumn.PAIRING.columnName(),
          DerivedColumn.GRAFTING_DAY.columnName(),
          DerivedColumn.GRAFT_ATTEMPT.columnName());

  private final List<ColumnTrack> tracks = new ArrayList<>();
  private final Map<String, Integer> places = new HashMap<>();
  private final Predicate<String> wanted;
  private final Set<String> essential;

  private RecordsLayout(Predicate<String> wanted, List<ColumnRule> more, Set<String> essential) {
    this.wanted = wanted;
    this.essential = essential;
    for (RecordColumn column : RecordColumn.values()) {
      add(column.columnName(), column.kind());
    }
    for (DerivedColumn column : DerivedColumn.values()) {
      add(column.columnName(), column.kind());
    }
    for (ColumnRule rule : more) {
      add(rule.name(), rule.kind());
    }
  }

  /**
   * The layout of records.
   *
   * @param wanted names of columns whose values are used, beyond the checks
   */
  public static RecordsLayout ofRecords(Predicate<String> wanted) {
    return new RecordsLayout(
        wanted,
        List.of(),
        names(
            RecordColumn.CULTIVAR,
            RecordColumn.ROOTSTOCK,
            RecordColumn.GRAFTS,
            RecordColumn.TAKES,
            RecordColumn.OUTCOME));
  }

  /** The layout of repeated assessments. */
  public static RecordsLayout ofAssessments() {
    Set<String> essential =
        names(RecordColumn.RECORD, RecordColumn.SEASON, RecordColumn.ASSESSED_DATE);
    essential.add(DerivedColumn.DAYS_TO_ASSESSMENT.columnName());
    essential.add(KnownColumns.ALIVE.name());
    return new RecordsLayout(name -> true, List.of(KnownColumns.ALIVE), essential);
  }

  private static Set<String> names(RecordColumn... columns) {
    Set<String> names = new HashSet<>();
    for (RecordColumn column : columns) {
      names.add(column.columnName());
    }
    return names;
  }

  /** Whether a row can't be used where the value of a column can't be read. */
  boolean essential(int place) {
    return essential.contains(tracks.get(place).name());
  }

  /** The names a heading may have to be one of ours. */
  public List<String> ourNames() {
    return tracks.stream()
        .filter(track -> !track.own() && !WORKED_OUT.contains(track.name()))
        .map(ColumnTrack::name)
        .toList();
  }

  private int add(String name, ColumnKind kind) {
    tracks.add(new ColumnTrack(name, kind, wanted.test(name)));
    places.put(plain(name), tracks.size() - 1);
    return tracks.size() - 1;
  }

  /** Names that differ in case only are one column, in a table too. */
  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  /** The number of a column; a name not known yet becomes a column of the user's own. */
  public int place(String name) {
    Integer place = places.get(plain(name));
    return place != null ? place : add(name, null);
  }

  @SuppressWarnings("EnumOrdinal") // the place of a column is its place in the enum, by definition
  public static int place(RecordColumn column) {
    return column.ordinal();
  }

  @SuppressWarnings("EnumOrdinal") // likewise
  public static int place(DerivedColumn column) {
    return RECORD_COLUMNS + column.ordinal();
  }

  public int size() {
    return tracks.size();
  }

  public ColumnTrack track(int place) {
    return tracks.get(place);
  }

  public ColumnTrack track(RecordColumn column) {
    return tracks.get(place(column));
  }

  public ColumnTrack track(DerivedColumn column) {
    return tracks.get(place(column));
  }

  /**
   * The names of all columns the records have.
   *
   * @return in the order of their numbers
   */
  public List<String> names() {
    return tracks.stream().filter(ColumnTrack::present).map(ColumnTrack::name).toList();
  }

  /**
   * The number of a column.
   *
   * @param name its name
   * @return its number, or -1 if the records have no such column
   */
  public int indexOf(String name) {
    Integer place = places.get(plain(name));
    return place != null && tracks.get(place).present() ? place : -1;
  }

  /**
   * What kind of value a column holds. A column that isn't one of ours is settled only after the
   * last row: it holds numbers if every value reads as a number, else levels.
   *
   * @param column its number
   * @return the kind
   */
  public ColumnKind kind(int column) {
    return tracks.get(column).kind();
  }

  /**
   * Whether values of a column are levels while rows are read: names, days, and all columns that
   * aren't ours.
   *
   * @param column its number
   * @return true if {@link RecordRow#code} holds its values, false if {@link RecordRow#number} does
   */
  public boolean coded(int column) {
    ColumnTrack track = tracks.get(column);
    return track.own() || track.kind() == ColumnKind.LEVELS || track.kind() == ColumnKind.DATE;
  }

  /**
   * The name of a level.
   *
   * @param column number of a column that is {@link #coded}
   * @param code as in {@link RecordRow#code}, not missing
   * @return the name; of a date, as yyyy-MM-dd
   */
  public String levelName(int column, int code) {
    ColumnTrack track = tracks.get(column);
    return track.kind() == ColumnKind.DATE
        ? LocalDate.ofEpochDay(code).toString()
        : track.levels().name(code);
  }

  /**
   * The number a level stands for, in a column that isn't ours and turned out to hold numbers.
   *
   * @param column number of such a column
   * @param code as in {@link RecordRow#code}, not missing
   * @return the number
   */
  public double levelNumber(int column, int code) {
    return tracks.get(column).number(code);
  }
}
