package org.taketally.wording.season;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.answers.survival.LateLoss;
import org.taketally.wording.language.Phrases;

/** What time does: to budwood kept, and to grafts that took. */
public final class TimeWords {

  private final Phrases phrases;
  private final Takes takes;

  TimeWords(Phrases phrases) {
    this.phrases = phrases;
    this.takes = new Takes(phrases);
  }

  /**
   * Heading of storage.
   *
   * @return a question
   */
  public String storage() {
    return phrases.say("storage");
  }

  /**
   * Take at both ends of the curve.
   *
   * @param curve two points or more
   * @return a sentence
   */
  public String ends(TakeCurve curve) {
    Point first = curve.points().get(0);
    Point last = curve.points().get(curve.points().size() - 1);
    return phrases.say(
        "storage.ends",
        phrases.sentence(takes.take(first.take())),
        phrases.amount(first.value(), curve.unit()),
        takes.take(last.take()),
        phrases.amount(last.value(), curve.unit()));
  }

  /**
   * Take at both ends of the curve with its question, among other points.
   *
   * @param curve two points or more
   * @return a question and a sentence
   */
  public String storagePoint(TakeCurve curve) {
    return storage() + " " + ends(curve);
  }

  /**
   * Caption of the table of storage.
   *
   * @param column of the records
   * @return a few words
   */
  public String storageCaption(String column) {
    return phrases.say("storage.caption", phrases.column(column));
  }

  /**
   * Headings of the table of storage.
   *
   * @param column of the records
   * @return one per column
   */
  public List<String> storageHeadings(String column) {
    return phrases.headings("storage.headings", takes.column(column));
  }

  /**
   * A line of the table of storage.
   *
   * @param point of the curve
   * @param unit of its value
   * @return one text per column
   */
  public List<String> storageRow(Point point, String unit) {
    return List.of(phrases.amount(point.value(), unit), takes.cell(Optional.of(point.take())));
  }

  /**
   * Where the curve ends.
   *
   * @return a sentence
   */
  public String storageLimits() {
    return phrases.say("storage.limits");
  }

  /**
   * Heading of late loss.
   *
   * @return a question
   */
  public String lateLoss() {
    return phrases.say("late.loss");
  }

  /**
   * How many were lost.
   *
   * @param loss of all grafts together
   * @return a sentence
   */
  public String lost(LateLoss loss) {
    return phrases.say(
        "late.loss.text",
        phrases.sentence(takes.take(loss.all().lateLoss())),
        loss.rounds().get(loss.rounds().size() - 1).middle());
  }

  /**
   * Early counts beside late ones.
   *
   * @param loss of all grafts together
   * @return two sentences
   */
  public String countedEarly(LateLoss loss) {
    return phrases.say(
        "late.loss.early",
        phrases.percent(loss.all().early().rate()),
        phrases.percent(loss.all().last().rate()));
  }
}
