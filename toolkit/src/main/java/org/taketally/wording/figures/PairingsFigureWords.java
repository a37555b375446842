package org.taketally.wording.figures;

import java.util.List;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.Pairings.Pairing;
import org.taketally.wording.Words;

/** The figure of pairings that take worse than expected in words. */
public final class PairingsFigureWords {

  /** The key's word for a flagged pairing. */
  public static final String FLAGGED = "on the short list";

  /** The key's word for any other. */
  public static final String OTHERS = "as expected, or nearly";

  /** The key's word for what was expected. */
  public static final String EXPECTED = "expected from cultivar and rootstock alone";

  private final Pairings pairings;

  /**
   * The words of a figure.
   *
   * @param pairings the figure shows
   */
  public PairingsFigureWords(Pairings pairings) {
    this.pairings = pairings;
  }

  /**
   * The title, which is what was found.
   *
   * @param flagged how many are on the short list
   * @return a sentence without a full stop
   */
  public String title(int flagged) {
    return switch (flagged) {
      case 0 -> "No pairing stands out as failing on its own";
      case 1 -> "One pairing takes worse than it should";
      default -> flagged + " pairings take worse than they should";
    };
  }

  /**
   * What is shown, from how many grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return "Cultivar on rootstock, largest shortfall first; %s; %s"
        .formatted(
            Words.count(pairings.pairings().size(), "pairing"),
            Words.count(pairings.tally().grafts(), "graft"));
  }

  /**
   * The figure for those who can't see it.
   *
   * @param flagged pairings on the short list
   * @return a few sentences
   */
  public String description(List<Pairing> flagged) {
    StringBuilder text = new StringBuilder(subtitle()).append(". On the short list: ");
    text.append(
        flagged.isEmpty() ? "none" : Words.list(flagged.stream().map(this::detail).toList()));
    if (!flagged.isEmpty()) {
      text.append(". Of these, about ").append(Words.percent(pairings.falseShare()));
      text.append(" are expected to be there by chance");
    }
    return text.append('.').toString();
  }

  /**
   * A pairing.
   *
   * @param pairing any
   * @return a few words
   */
  public String label(Pairing pairing) {
    return pairing.cultivar() + " on " + pairing.rootstock();
  }

  /**
   * A pairing in full.
   *
   * @param pairing any
   * @return a few words
   */
  public String detail(Pairing pairing) {
    return "%s, %s where %s was expected, %s"
        .formatted(
            label(pairing),
            Words.take(pairing.take()),
            Words.percent(pairing.expected()),
            Words.count(pairing.tally().grafts(), "graft"));
  }

  /**
   * A pairing's shortfall.
   *
   * @param signed points with their sign
   * @return a few words
   */
  public String shortfall(String signed) {
    return signed + (signed.matches("\\D?1") ? " point" : " points");
  }

  /**
   * That more pairings stand in the table.
   *
   * @param left how many
   * @return a sentence
   */
  public String left(int left) {
    return Words.count(left, "more pairing") + ", none on the short list: see the table.";
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return Words.count(left) + " pairings between are in the table";
  }
}
