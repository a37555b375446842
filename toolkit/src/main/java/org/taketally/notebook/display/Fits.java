package org.taketally.notebook.display;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.model.FitWarning;
import org.taketally.model.FixedEffect;
import org.taketally.model.LotPrediction;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.VaryingFactor;
import org.taketally.wording.Words;

/** Models and fits. */
final class Fits {

  private static final double LIKELY = 0.95;

  private Fits() {}

  static Shown model(TakeModel model) {
    return Shown.paragraph(sentence(model));
  }

  private static String sentence(TakeModel model) {
    List<String> parts = new ArrayList<>();
    List<String> adjusted = new ArrayList<>(model.adjusted());
    model.compared().ifPresent(adjusted::remove);
    if (!adjusted.isEmpty()) {
      parts.add("adjusted for " + String.join(", ", adjusted));
    }
    if (!model.curves().isEmpty()) {
      parts.add("with a curve for " + String.join(", ", model.curves().keySet()));
    }
    if (!model.varying().isEmpty()) {
      parts.add("varying by " + String.join(", ", model.varying()));
    }
    model.compared().ifPresent(column -> parts.add("comparing " + column));
    return "Takes"
        + (parts.isEmpty() ? ", one rate for all" : " " + String.join("; ", parts))
        + ".";
  }

  static Shown fit(TakeFit fit) {
    List<Shown> parts = new ArrayList<>();
    parts.add(Shown.heading("Fit of takes"));
    parts.add(model(TakeModel.of(fit.model())));
    parts.add(
        Shown.paragraph(
            "%,d grafts in %,d cells, %d parameters, log-likelihood %s."
                .formatted(
                    fit.cells().graftsTotal(),
                    fit.cells().size(),
                    fit.parameters(),
                    number(fit.logLikelihood()))));
    for (FitWarning warning : fit.warnings()) {
      parts.add(Shown.warning(warning.sentence()));
    }
    parts.add(Shown.of(fixed(fit)));
    if (!fit.varying().isEmpty()) {
      parts.add(Shown.of(varying(fit)));
    }
    return Shown.all(parts);
  }

  static Shown forecast(LotPrediction lot) {
    return Shown.paragraph(
        "About %s of such grafts take (likely %s). count(grafts, 0.9) gives how many of a number of grafts, draws() every draw."
            .formatted(Words.percent(lot.take()), Words.percents(lot.take(LIKELY))));
  }

  static Shown design(TakeDesign design) {
    return Shown.paragraph("Fixed part of the model: " + String.join(", ", design.names()) + ".");
  }

  static Shown draws(TakeDraws draws) {
    return Shown.paragraph(
        "%,d draws of %s, in logits. Analysis gives them as a table with named columns: draws(), and takeDraws(column) as takes."
            .formatted(draws.count(), String.join(", ", draws.fixedNames())));
  }

  private static Grid fixed(TakeFit fit) {
    List<List<String>> rows = new ArrayList<>();
    for (FixedEffect effect : fit.fixed()) {
      rows.add(
          List.of(
              effect.name(),
              number(effect.estimate()),
              number(effect.standardError()),
              number(effect.interval().low()),
              number(effect.interval().high())));
    }
    return Grid.of(
        "Adjusted for, logits (95 % intervals)",
        List.of("term", "estimate", "standard error", "low", "high"), rows);
  }

  private static Grid varying(TakeFit fit) {
    List<List<String>> rows = new ArrayList<>();
    for (VaryingFactor factor : fit.varying()) {
      rows.add(
          List.of(
              factor.factor(),
              String.valueOf(factor.levels().size()),
              number(factor.standardDeviation())));
    }
    return Grid.of(
        "Varies between levels, standard deviations in logits",
        List.of("by", "levels", "standard deviation"),
        rows);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, Math.abs(value) >= 1000 ? "%,.2f" : "%.3f", value);
  }
}
