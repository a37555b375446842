package org.taketally.checks;

import org.taketally.cells.Cells;
import org.taketally.model.FixedEffect;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** Models without anything varying: plum cuttings, germinating seeds, hickories by stock. */
final class FixedModelChecks implements CheckSource {

  @Override
  public void addTo(PublishedChecks checks) {
    addPlums(checks);
    addGermination(checks);
    addHickories(checks);
  }

  private static void addPlums(PublishedChecks checks) {
    String example = "plum_cuttings";
    Cells plums = CheckCells.of(example).factor("time").factor("length").count("planted", "alive");
    TakeFit fit = TakeModel.ofTakes().adjustFor("time", "length").fit(plums);
    addEffect(checks, "logit additive: intercept (SE)", fit.fixed().get(0));
    addEffect(checks, "logit additive: spring (SE)", fit.fixed().get(1));
    addEffect(checks, "logit additive: short (SE)", fit.fixed().get(2));
    checks
        .check(example, "logit additive residual deviance (1 df)")
        .ours(() -> new double[] {CheckCells.deviance(fit)});
  }

  private static void addEffect(PublishedChecks checks, String quantity, FixedEffect effect) {
    checks
        .check("plum_cuttings", quantity)
        .ours(() -> new double[] {effect.estimate(), effect.standardError()});
  }

  private static void addGermination(PublishedChecks checks) {
    Cells seeds =
        CheckCells.of("mead_germination")
            .factor("temp")
            .factor("conc")
            .factor("both", row -> row.getField("temp") + " " + row.getField("conc"))
            .count("seeds", "germ");
    TakeModel none = TakeModel.ofTakes();
    addDeviance(checks, "null deviance (63 df)", none, seeds);
    addDeviance(checks, "temp deviance (60)", none.adjustFor("temp"), seeds);
    addDeviance(checks, "conc deviance (60)", none.adjustFor("conc"), seeds);
    addDeviance(checks, "temp+conc (57)", none.adjustFor("temp", "conc"), seeds);
    addDeviance(checks, "temp*conc (48)", none.adjustFor("both"), seeds);
  }

  private static void addDeviance(
      PublishedChecks checks, String quantity, TakeModel model, Cells cells) {
    checks
        .check("mead_germination", quantity)
        .ours(() -> new double[] {CheckCells.deviance(model.fit(cells))});
  }

  private static void addHickories(PublishedChecks checks) {
    String example = "graft_hickory_bixby_1923";
    Cells hickories = CheckCells.of(example).factor("stock").count("grafts_set", "catches");
    checks
        .check(example, "binomial deviance null(64), stock(60)")
        .ours(
            () ->
                new double[] {
                  CheckCells.deviance(TakeModel.ofTakes().fit(hickories)),
                  CheckCells.deviance(TakeModel.ofTakes().adjustFor("stock").fit(hickories))
                })
        .referenceReadAs("131.88, 127.03");
  }
}
