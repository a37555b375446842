package org.taketally.records.sources;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A source of rows that another one gives, changed on the way. */
abstract class SourceAround implements RowSource {

  private final RowSource around;
  private final List<String> headings;

  SourceAround(RowSource around, List<String> headings) {
    this.around = around;
    this.headings = List.copyOf(headings);
  }

  RowSource around() {
    return around;
  }

  @Override
  public String name() {
    return around.name();
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public Optional<Path> path() {
    return around.path();
  }

  @Override
  public Optional<String> sheet() {
    return around.sheet();
  }

  @Override
  public boolean mayBeLeftOut() {
    return around.mayBeLeftOut();
  }

  @Override
  public long likelyHeadingRow() {
    return around.likelyHeadingRow();
  }

  @Override
  public boolean semicolons() {
    return around.semicolons();
  }
}
