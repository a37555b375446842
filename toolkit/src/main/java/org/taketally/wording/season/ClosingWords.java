package org.taketally.wording.season;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.taketally.terms.Provenance;
import org.taketally.wording.language.Phrases;

/** Cautions, how to read the page, and where its numbers come from. */
public final class ClosingWords {

  private final Phrases phrases;

  ClosingWords(Phrases phrases) {
    this.phrases = phrases;
  }

  /**
   * When a line of the page stands by itself.
   *
   * @param grafts fewest grafts
   * @param members fewest members
   * @param largestShare largest share one member may hold
   * @param membersForExtremes fewest members where none or all took
   */
  public record Rule(int grafts, int members, double largestShare, int membersForExtremes) {}

  /**
   * Heading of the cautions.
   *
   * @return a few words
   */
  public String takeCare() {
    return phrases.say("care");
  }

  /**
   * The cautions.
   *
   * @return a paragraph each
   */
  public List<String> cautions() {
    return said("care.knives", "care.disinfectants", "care.wood", "care.protected", "care.sprays");
  }

  /**
   * Heading of how to read the page.
   *
   * @return a few words
   */
  public String howToRead() {
    return phrases.say("read");
  }

  /**
   * How to read the page.
   *
   * @return a point each
   */
  public List<String> reading() {
    List<String> points = new ArrayList<>(new SureWords(phrases).limits());
    points.addAll(said("read.counted", "read.cant.tell", "read.points", "read.limits"));
    return points;
  }

  private List<String> said(String... keys) {
    return Stream.of(keys).map(phrases::say).toList();
  }

  /**
   * Heading of where the numbers come from.
   *
   * @return a few words
   */
  public String about() {
    return phrases.say("about");
  }

  /**
   * How many rows were read and used.
   *
   * @param provenance of the records
   * @param looks values that need a look
   * @return a sentence
   */
  public String rows(Provenance provenance, long looks) {
    return phrases.say(
        "about.rows",
        provenance.rowsRead(),
        provenance.rowsKept(),
        provenance.rowsSetAside(),
        looks);
  }

  /**
   * What is held back, and why.
   *
   * @param rule of the page
   * @param unnamed grafts without a grafter's name
   * @return a few sentences
   */
  public String privacy(Rule rule, long unnamed) {
    String text =
        phrases.say(
            "about.privacy",
            rule.grafts(),
            rule.members(),
            phrases.percent(rule.largestShare()),
            Math.max(rule.members(), rule.membersForExtremes()));
    return unnamed == 0 ? text : text + " " + phrases.say("about.unnamed", unnamed);
  }

  /**
   * What is held back where only the joint result is given.
   *
   * @param membersNamed whether the records say who grafted
   * @return a few sentences
   */
  public String jointOnly(boolean membersNamed) {
    return phrases.say(membersNamed ? "about.joint" : "about.joint.unnamed");
  }

  /**
   * What whoever publishes must keep.
   *
   * @return two sentences
   */
  public String publisher() {
    return phrases.say("about.publisher");
  }

  /**
   * Grafts held back because of an earlier page.
   *
   * @param grafts how many
   * @return two sentences
   */
  public String heldBack(long grafts) {
    return phrases.say("about.held.back", grafts);
  }

  /**
   * Seasons left out because they have changed since they were published.
   *
   * @param seasons names
   * @return a sentence
   */
  public String changedSince(List<String> seasons) {
    return phrases.say("about.changed", phrases.list(seasons));
  }

  /**
   * How members send in their results.
   *
   * @param words of whoever publishes
   * @return a sentence
   */
  public String sendTo(String words) {
    return phrases.say("about.send", words);
  }

  /**
   * Heading of how it was worked out.
   *
   * @return a few words
   */
  public String methods() {
    return phrases.say("about.methods");
  }

  /**
   * How it was worked out, for statisticians.
   *
   * @return a paragraph
   */
  public String method() {
    return phrases.say("about.methods.text");
  }
}
