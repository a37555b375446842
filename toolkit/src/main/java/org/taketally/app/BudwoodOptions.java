package org.taketally.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.effects.TakeCurveCalculator;
import org.taketally.model.TakeFit;
import org.taketally.plan.order.BudwoodPlan;
import org.taketally.plan.order.BudwoodRequests;
import org.taketally.plan.order.StorageLimits;
import org.taketally.plan.order.WoodUse;
import org.taketally.records.CropProfiles;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.terms.CropProfile;
import picocli.CommandLine.Option;

/** Requests for budwood: the list, and what is known of how long wood keeps. */
final class BudwoodOptions {

  private static final String STORAGE = DerivedColumn.STORAGE_DAYS.columnName();

  @Option(
      names = "--request",
      paramLabel = "LIST",
      description =
          "Instead of an order book: budwood asked for, CSV or XLSX: cultivar, sticks, needed (date), and"
              + " where known bud_stage (wanted), buds (on the trees today), on_tree (sticks there"
              + " are).")
  private Path list;

  @Option(
      names = "--crop",
      paramLabel = "CROP",
      description =
          "With --request: how long wood keeps, by a profile of \"taketally crop list\" or a file.")
  private String crop;

  boolean given() {
    return list != null;
  }

  Path list() {
    return list;
  }

  List<Path> inputs(PastRecordsOptions past) {
    List<Path> all = new ArrayList<>(past.inputs(list));
    if (crop != null && Files.exists(Path.of(crop))) {
      all.add(Path.of(crop));
    }
    return all;
  }

  BudwoodRequests read(PastRecordsOptions past) {
    BudwoodRequests read = BudwoodRequests.read(list, past.ofList());
    UnusableList.require("the list of requests", read.problems());
    return read;
  }

  BudwoodPlan plan(BudwoodRequests read, WoodUse wood, PastRecordsOptions past, LocalDate today) {
    return BudwoodPlan.of(read.requests(), wood, storage(past), today);
  }

  private StorageLimits storage(PastRecordsOptions past) {
    StorageLimits limits = StorageLimits.UNKNOWN;
    if (crop != null) {
      Path file = Path.of(crop);
      CropProfile profile =
          Files.isRegularFile(file) ? CropProfiles.load(file) : CropProfiles.named(crop);
      limits = StorageLimits.of(profile);
    }
    if (!past.given()) {
      return limits;
    }
    TakeFit fit = past.fit();
    AnswerOptions options = AnswerOptions.defaults();
    MarginalTakes takes = MarginalTakes.of(fit, options);
    return takes.knows(STORAGE) && fit.cells().findMeasure(STORAGE).isPresent()
        ? limits.with(TakeCurveCalculator.of(takes, options, STORAGE), options.margin())
        : limits;
  }
}
