package org.taketally.answers.verdict;

import org.taketally.model.FitOptions;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.compare.LikelihoodRatioTest;

/** How often pairings that don't differ would spread as much; fitted when first asked for. */
final class PairingsByChance {

  private final TakeFit fit;
  private double pValue = Double.NaN;

  /** Of a fit in which pairings vary. */
  PairingsByChance(TakeFit fit) {
    this.fit = fit;
  }

  /** 0 to 1. */
  double pValue() {
    if (Double.isNaN(pValue)) {
      TakeFit without =
          TakeModel.of(fit.model())
              .without(TakeModel.PAIRING)
              .fitNear(fit, fit.cells(), FitOptions.defaults().withExpectedInformation());
      pValue = LikelihoodRatioTest.of(without, fit).pValue();
    }
    return pValue;
  }
}
