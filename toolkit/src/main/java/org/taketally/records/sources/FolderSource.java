package org.taketally.records.sources;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A sheet that was found in a folder, not named: it may hold something else than records. */
record FolderSource(RowSource found) implements RowSource {

  @Override
  public String name() {
    return found.name();
  }

  @Override
  public List<String> headings() {
    return found.headings();
  }

  @Override
  public Optional<Path> path() {
    return found.path();
  }

  @Override
  public Optional<String> sheet() {
    return found.sheet();
  }

  @Override
  public boolean mayBeLeftOut() {
    return true;
  }

  @Override
  public boolean ofFolder() {
    return true;
  }

  @Override
  public long likelyHeadingRow() {
    return found.likelyHeadingRow();
  }

  @Override
  public boolean semicolons() {
    return found.semicolons();
  }

  @Override
  public Rows open() {
    return found.open();
  }
}
