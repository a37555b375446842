package org.taketally.wording.figures;

import java.util.List;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.answers.effects.TakeCurve.Range;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** The figure of take against a number in words. */
public final class TakeCurveFigureWords {

  private final TakeCurve curve;
  private final Phrases phrases;

  /**
   * The words of a figure.
   *
   * @param curve the figure shows
   * @param language of the figure
   */
  public TakeCurveFigureWords(TakeCurve curve, Language language) {
    this.curve = curve;
    this.phrases = Phrases.in(language);
  }

  /**
   * The title.
   *
   * @return a few words
   */
  public String title() {
    return phrases.say("figure.curve.title", phrases.column(curve.column()));
  }

  /**
   * What else went in, and from how many grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return phrases.say("figure.curve.subtitle", curve.tally().grafts());
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    StringBuilder text = new StringBuilder(subtitle()).append('.');
    List<Point> points = curve.points();
    if (!points.isEmpty()) {
      for (Point point : List.of(points.get(0), points.get(points.size() - 1))) {
        String take = Lists.take(phrases, point.take());
        text.append(' ').append(phrases.say("figure.curve.at", number(point.value()), take));
      }
    }
    if (Double.isFinite(curve.thinFrom())) {
      text.append(' ').append(phrases.say("figure.curve.thin", number(curve.thinFrom())));
    }
    return text.toString();
  }

  /**
   * That there is nothing to show.
   *
   * @return a sentence
   */
  public String empty() {
    return phrases.say("figure.curve.empty");
  }

  /**
   * The key's word for the line.
   *
   * @return a few words
   */
  public String adjusted() {
    return phrases.say("figure.curve.adjusted");
  }

  /**
   * The key's word for the ribbon.
   *
   * @return a few words
   */
  public String likely() {
    return phrases.say("figure.likely");
  }

  /**
   * The key's word for the counted takes.
   *
   * @return a few words
   */
  public String counted() {
    return phrases.say("figure.curve.counted");
  }

  /**
   * What the axis shows.
   *
   * @return a few words
   */
  public String axis() {
    String name = phrases.column(curve.column());
    String unit = phrases.unit(curve.unit());
    return unit.isEmpty() || name.endsWith(unit)
        ? name
        : phrases.say("figure.curve.caption", name, unit);
  }

  /**
   * A number along the axis.
   *
   * @param value any
   * @return the number
   */
  public String number(double value) {
    return phrases.number(value);
  }

  /**
   * The stretch with few grafts.
   *
   * @return a few words
   */
  public String few() {
    return phrases.say("figure.curve.few");
  }

  /**
   * Grafts counted together.
   *
   * @param range where they lie
   * @return a few words
   */
  public String detail(Range range) {
    return phrases.say(
        "figure.curve.detail",
        number(range.from()),
        number(range.to()),
        range.tally().takes(),
        range.tally().grafts());
  }

  /**
   * The name of the bars of grafts.
   *
   * @return a word
   */
  public String grafts() {
    return phrases.say("figure.grafts");
  }

  /**
   * A number of grafts.
   *
   * @param count any
   * @return the number
   */
  public String count(long count) {
    return phrases.count(count);
  }
}
