package org.taketally.records.rows;

import java.util.Map;
import java.util.OptionalDouble;
import org.taketally.records.sources.Trim;

/**
 * Reads a column that isn't one of ours. Whether it holds numbers or names is known only at its
 * end: it holds numbers if every value reads as one.
 */
final class OtherReader implements FieldReader {

  private final ColumnTrack track;
  private final Map<String, String> same;
  private final boolean names;
  private final NumberNotation notation;

  /**
   * A reader.
   *
   * @param same spelling in the sheet to the name meant
   * @param names whether values are names even if all of them are numbers
   */
  OtherReader(ColumnTrack track, Map<String, String> same, boolean names, NumberNotation notation) {
    this.track = track;
    this.same = same;
    this.names = names;
    this.notation = notation;
  }

  @Override
  public FieldValue read(String typed, boolean exact) {
    String text = same.containsKey(typed) ? typed : Trim.singleSpaced(typed);
    if (NameReader.isDitto(text, same)) {
      return NameReader.DITTO;
    }
    String name = same.getOrDefault(text, text);
    if (track.mayBeNumber()) {
      OptionalDouble number = exact ? NumberNotation.exact(name) : notation.read(name);
      track.meet(name, names ? OptionalDouble.empty() : number);
    }
    // A column nobody wants is not kept: its names may be as many as the rows.
    return track.wanted() ? FieldValue.code(track.levels().code(name)) : FieldValue.UNKEPT;
  }
}
