package org.taketally.model.laplace;

/** More levels of crossed varying columns than can be solved for together. */
public final class TooManyLevels extends RuntimeException {

  private static final long serialVersionUID = 1L;

  TooManyLevels(int levels, int most) {
    super(
        "%,d levels of crossed varying columns are more than the %,d that fit in memory; vary by coarser columns (season instead of grafting day), or leave the largest crossed column out"
            .formatted(levels, most));
  }
}
