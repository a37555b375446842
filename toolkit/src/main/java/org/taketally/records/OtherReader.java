package org.taketally.records;

import java.util.OptionalDouble;

/**
 * Reads a column that isn't one of ours. Whether it holds numbers or names is known only at its
 * end: it holds numbers if every value reads as one.
 */
final class OtherReader implements FieldReader {

  private final ColumnTrack track;
  private final ColumnEntry entry;
  private final NumberNotation notation;

  OtherReader(ColumnTrack track, ColumnEntry entry, NumberNotation notation) {
    this.track = track;
    this.entry = entry;
    this.notation = notation;
  }

  @Override
  public FieldValue read(String text, boolean exact) {
    String name = entry.same().getOrDefault(text, text);
    if (track.mayBeNumber()) {
      OptionalDouble number = exact ? NumberNotation.exact(name) : notation.read(name);
      track.meet(name, entry.levels() ? OptionalDouble.empty() : number);
    }
    // A column nobody wants is not kept: its names may be as many as the rows.
    return track.wanted() ? FieldValue.code(track.levels().code(name)) : FieldValue.UNKEPT;
  }
}
