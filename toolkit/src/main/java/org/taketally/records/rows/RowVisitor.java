package org.taketally.records.rows;

/** Sees every usable row once, in order. */
public interface RowVisitor {

  /**
   * Called before the first row.
   *
   * @param layout the columns by number
   */
  void begin(RecordsLayout layout);

  /**
   * Called for each usable row, assessed or not.
   *
   * @param row valid only during the call
   */
  void row(RecordRow row);

  /** Looks at nothing: for checks, which every row goes through anyway. */
  RowVisitor NONE =
      new RowVisitor() {
        @Override
        public void begin(RecordsLayout layout) {}

        @Override
        public void row(RecordRow row) {}
      };
}
