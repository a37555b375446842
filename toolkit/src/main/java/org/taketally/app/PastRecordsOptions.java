package org.taketally.app;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.taketally.model.TakeFit;
import org.taketally.plan.forecast.PastSeasons;
import org.taketally.records.GraftRecords;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.wording.OrderBasisWords;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Records of past seasons that something to come is reckoned from. */
final class PastRecordsOptions {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--records",
      arity = "1..*",
      paramLabel = "FILE",
      description =
          "Records of past seasons: lines that state no take are reckoned from them, with all that"
              + " is uncertain.")
  private List<Path> files = new ArrayList<>();

  @Mixin private DictionaryOption dictionary = new DictionaryOption();

  private GraftRecords records;

  boolean given() {
    return !files.isEmpty();
  }

  /** Every file read: the book and the records. */
  List<Path> inputs(Path book) {
    List<Path> all = new ArrayList<>(List.of(book));
    all.addAll(files);
    dictionary.file().ifPresent(all::add);
    return all;
  }

  /** How an order book or a list of requests is written, which may be read beside records. */
  SheetDictionary ofList() {
    return dictionary.ofList(command.commandLine(), given());
  }

  /** Reads the records, says what was read, and fits them. */
  TakeFit fit() {
    files.forEach(file -> InputFile.require(command.commandLine(), file));
    records = dictionary.reader(command.commandLine()).read(files);
    PrintWriter err = command.commandLine().getErr();
    err.println(RecordsOptions.whatWasRead(records.check()));
    err.flush();
    records.check().requireSettled();
    if (records.grafts() == 0) {
      throw new CannotCompute(
          "these records hold no assessed graft, so nothing can be reckoned from them; state takes"
              + " in the book instead");
    }
    return PastSeasons.fit(records);
  }

  /** The records, after {@link #fit}. */
  GraftRecords records() {
    return records;
  }

  List<String> notes() {
    return List.of(OrderBasisWords.records(records.grafts(), records.check().seasons().size()));
  }
}
