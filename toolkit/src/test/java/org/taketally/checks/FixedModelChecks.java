package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.FixedEffect;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.terms.Provenance;

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
    Cells plums = cells(example, "planted", "alive", column("time"), column("length"));
    TakeFit fit = TakeModel.ofTakes().adjustFor("time", "length").fit(plums);
    addEffect(checks, "logit additive: intercept (SE)", fit.fixed().get(0));
    addEffect(checks, "logit additive: spring (SE)", fit.fixed().get(1));
    addEffect(checks, "logit additive: short (SE)", fit.fixed().get(2));
    checks
        .check(example, "logit additive residual deviance (1 df)")
        .ours(() -> new double[] {deviance(fit)});
  }

  private static void addEffect(PublishedChecks checks, String quantity, FixedEffect effect) {
    checks
        .check("plum_cuttings", quantity)
        .ours(() -> new double[] {effect.estimate(), effect.standardError()});
  }

  private static void addGermination(PublishedChecks checks) {
    Cells seeds =
        cells(
            "mead_germination",
            "seeds",
            "germ",
            column("temp"),
            column("conc"),
            new Column("both", row -> row.getField("temp") + " " + row.getField("conc")));
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
        .ours(() -> new double[] {deviance(model.fit(cells))});
  }

  private static void addHickories(PublishedChecks checks) {
    String example = "graft_hickory_bixby_1923";
    Cells hickories = cells(example, "grafts_set", "catches", column("stock"));
    checks
        .check(example, "binomial deviance null(64), stock(60)")
        .ours(
            () ->
                new double[] {
                  deviance(TakeModel.ofTakes().fit(hickories)),
                  deviance(TakeModel.ofTakes().adjustFor("stock").fit(hickories))
                })
        .referenceReadAs("131.88, 127.03");
  }

  /** Twice the log likelihood lacking to a model that fits each row exactly. */
  private static double deviance(TakeFit fit) {
    Cells cells = fit.cells();
    double saturated = 0;
    for (int i = 0; i < cells.size(); i++) {
      double y = cells.takes()[i];
      double n = cells.grafts()[i];
      saturated += y > 0 ? y * Math.log(y / n) : 0;
      saturated += y < n ? (n - y) * Math.log(1 - y / n) : 0;
    }
    return 2 * (saturated - fit.logLikelihood());
  }

  private record Column(String name, Function<NamedCsvRecord, String> level) {}

  private static Column column(String name) {
    return new Column(name, row -> row.getField(name));
  }

  /** One cell per row, levels in order of appearance. */
  private static Cells cells(String example, String grafts, String takes, Column... columns) {
    List<NamedCsvRecord> rows = CheckData.rows(example + ".csv");
    List<Factor> factors = new ArrayList<>();
    for (Column column : columns) {
      List<String> levels = rows.stream().map(column.level()).distinct().toList();
      int[] codes =
          rows.stream().mapToInt(row -> levels.indexOf(column.level().apply(row))).toArray();
      factors.add(new Factor(column.name(), levels, codes));
    }
    return new Cells(
        factors,
        List.of(),
        rows.stream().mapToInt(row -> CheckData.whole(row, grafts)).toArray(),
        rows.stream().mapToInt(row -> CheckData.whole(row, takes)).toArray(),
        0,
        Provenance.of(example, rows.size()));
  }
}
