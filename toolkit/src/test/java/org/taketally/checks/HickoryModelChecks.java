package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** Mixed models of hickory grafts, 1923 and 1924 (Bixby 1924). */
final class HickoryModelChecks implements CheckSource {

  @Override
  public void addTo(PublishedChecks checks) {
    addHickories(checks);
    addHickoriesBothYears(checks);
  }

  private static Cells hickories(String example) {
    return CheckCells.of(example).factor("variety").factor("stock").count("grafts_set", "catches");
  }

  private static void addHickories(PublishedChecks checks) {
    String example = "graft_hickory_bixby_1923";
    TakeModel model =
        TakeModel.ofTakes().adjustFor("stock").base("stock", "shagbark").varyBy("variety");
    TakeFit fit = model.nodes(25).fit(hickories(example));
    checks
        .check(
            example, "glmer stock fixed, (1|variety) AGQ25: Int,mockernut,pignut,pecan,bitternut")
        .ours(fit::beta)
        .referenceReadAs("0.59714, -0.77730, -0.16813, -0.09173, -0.07145")
        .referenceWithin(2e-4, MixedModelChecks.LOOSE);
    checks
        .check(example, "same SE")
        .ours(() -> CheckCells.errors(fit))
        .referenceWithin(1e-3, "R's curvature is by differences");
    checks
        .check(example, "same SD variety")
        .ours(() -> new double[] {fit.varying("variety").standardDeviation()})
        .referenceWithin(1e-4, MixedModelChecks.LOOSE);
    TakeFit laplace = model.fit(hickories(example));
    checks
        .check(example, "Laplace SD variety; logLik")
        .ours(
            () ->
                new double[] {
                  laplace.varying("variety").standardDeviation(), laplace.logLikelihoodOfCounts()
                })
        .referenceReadAs("1.18776, -83.864824")
        .remark("lme4 at tolerance 1e-10; its default search gave 1.1873 and -83.86495");
    TakeFit crossed = TakeModel.ofTakes().varyBy("stock", "variety").fit(hickories(example));
    checks
        .check(example, "crossed (1|stock)+(1|variety) Laplace: Int, SD variety, SD stock, logLik")
        .ours(() -> crossed(crossed, crossed.beta()[0]))
        .referenceReadAs("0.37439, 1.18382, 0, -85.628271")
        .remark("lme4 at tolerance 1e-10; its default search gave 0.37408 and 1.1834");
  }

  /** Shown with the spread of stocks between that of varieties and the log likelihood. */
  private static double[] crossed(TakeFit fit, double... first) {
    return MixedModelChecks.join(
        new double[] {
          fit.varying("variety").standardDeviation(),
          fit.varying("stock").standardDeviation(),
          fit.logLikelihoodOfCounts()
        },
        first);
  }

  private static void addHickoriesBothYears(PublishedChecks checks) {
    List<NamedCsvRecord> rows = new ArrayList<>(CheckData.rows("graft_hickory_bixby_1923.csv"));
    rows.addAll(CheckData.rows("graft_hickory_bixby_1924.csv"));
    Cells both =
        new CheckCells("hickories", rows)
            .factor("year")
            .factor("variety")
            .factor("stock")
            .count("grafts_set", "catches");
    TakeFit fit = TakeModel.ofTakes().adjustFor("year").varyBy("stock", "variety").fit(both);
    checks
        .check(
            "graft_hickory_bixby_1924",
            "both years: year effect 1924 (SE), SD variety, SD stock, logLik (crossed Laplace)")
        .ours(() -> crossed(fit, fit.beta()[1], CheckCells.errors(fit)[1]))
        .referenceWithin(1e-3, MixedModelChecks.LOOSE + ", and R's curvature is by differences");
  }
}
