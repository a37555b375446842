package org.taketally.build;

import java.nio.file.Path;
import java.util.List;
import org.taketally.analysis.Analysis;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

/** Somebody's program with the library as its only dependency; {@link LibraryAloneIT} runs it. */
public final class LibraryUser {

  private LibraryUser() {}

  /** Prints grafts, verdict and hardest cultivar of a file of records. */
  public static void main(String[] arguments) {
    GraftRecords records = RecordsReader.defaults().read(List.of(Path.of(arguments[0])));
    Analysis analysis = Analysis.of(records);
    System.out.println("grafts: " + records.grafts());
    System.out.println("rootstock: " + analysis.rootstock().isPresent());
    System.out.println("cultivars: " + analysis.difficulty().orElseThrow().cultivars().size());
  }
}
