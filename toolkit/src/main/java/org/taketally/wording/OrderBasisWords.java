package org.taketally.wording;

import org.taketally.plan.order.WoodUse;

/** What an order rests on, in words. */
public final class OrderBasisWords {

  private OrderBasisWords() {}

  /**
   * Of lines whose take was stated.
   *
   * @param seasonSpread standard deviation of takes from season to season, 0 to 1
   * @param batch grafts that share their luck, at least 1
   * @param batchSpread standard deviation of takes between them, 0 to 1
   * @return two sentences
   */
  public static String stated(double seasonSpread, int batch, double batchSpread) {
    return "Stated takes are taken as they are. Supposed beside them: seasons differ by %s and batches of %s by %s (standard deviations), a bad season being bad for every line."
        .formatted(
            Words.statedPoints(seasonSpread),
            Words.count(batch, "graft"),
            Words.statedPoints(batchSpread));
  }

  /**
   * Where records hold one season only.
   *
   * @param seasonSpread standard deviation supposed, 0 to 1
   * @return one sentence
   */
  public static String oneSeason(double seasonSpread) {
    return "The records hold one season, so they can't say how far seasons differ: %s (standard deviation) are supposed, common practice without a source unless you said otherwise."
        .formatted(Words.statedPoints(seasonSpread));
  }

  /**
   * What is lost after the take.
   *
   * @param lateLoss share of the takes, 0 to 1
   * @return one sentence or two
   */
  public static String lateLoss(double lateLoss) {
    return lateLoss == 0
        ? "No late loss was stated: every graft that takes is counted as a saleable tree. Say"
            + " --late-loss if some die later or are graded out."
        : "%s of the takes are lost before the tree is saleable."
            .formatted(Words.statedPercent(lateLoss));
  }

  /**
   * How wood is used.
   *
   * @param wood buds and sticks
   * @return two sentences
   */
  public static String wood(WoodUse wood) {
    return "Sticks: %d buds a graft, %d usable buds a stick, so %d grafts a stick; %s of the sticks spoil. Common practice, no source, unless you said otherwise."
        .formatted(
            wood.budsPerGraft(),
            wood.budsPerStick(),
            wood.graftsPerStick(),
            Words.statedPercent(wood.spoiled()));
  }

  /**
   * How many sticks spoil.
   *
   * @param wood buds and sticks
   * @return one sentence
   */
  public static String spoiled(WoodUse wood) {
    return "%s of the sticks spoil, common practice without a source unless you said otherwise."
        .formatted(Words.statedPercent(wood.spoiled()));
  }

  /**
   * Where takes come from records.
   *
   * @param grafts grafts of the records
   * @param seasons seasons of the records
   * @return one sentence
   */
  public static String records(long grafts, int seasons) {
    return "Takes of lines that state none come from %s in %s of records: your own hands, stocks and conditions in their past mix, in a season to come that may be better or worse, with what little may be known of a cultivar allowed for."
        .formatted(Words.count(grafts, "graft"), Words.count(seasons, "season"));
  }
}
