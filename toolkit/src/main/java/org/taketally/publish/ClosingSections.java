package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Caution;
import org.taketally.publish.Block.Fold;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.privacy.Evidence;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.terms.Provenance;
import org.taketally.wording.Words;

/** Cautions, how to read the page, and where its numbers come from. */
final class ClosingSections {

  private static final String METHOD =
      "Takes out of grafts are taken as binomial counts whose log-odds depend on the recorded"
          + " conditions, with cultivars, hands, sites, seasons and days varying around a common"
          + " mean (a mixed model). \"All else being equal\" averages the model over the mix of"
          + " conditions in all records. Likely ranges hold 95 of 100 times if the model is right;"
          + " those of plain counts are Wilson's, those of differences of plain counts Newcombe's.";

  private ClosingSections() {}

  static Section cautions() {
    return new Section(
        "take-care",
        "Take care",
        List.of(
            new Caution(
                "Knives: cut away from your body with a sharp blade, never catch a falling knife,"
                    + " close it between cuts, and stop when tired or cold. A deep cut or a numb"
                    + " finger needs a doctor."),
            new Caution(
                "Disinfectants: the label comes first. Clean blades before you disinfect them."
                    + " Bleach is corrosive and must be mixed fresh. Never mix bleach with ammonia,"
                    + " acids or vinegar, alcohol or peroxide, nor use one straight after the other"
                    + " on a wet blade. Alcohol burns: no flame near it."),
            new Caution(
                "Healthy wood: a tree without symptoms can carry a virus or viroid, and budwood,"
                    + " seed and tools can spread it. Before you move wood, trees or tools, ask"
                    + " your plant-health authority; this page can't tell you what is allowed."),
            new Caution(
                "Protected cultivars: propagating them, or giving wood away, may need the owner's"
                    + " permission, also within a club. Find out before you cut."),
            new Caution(
                "Sprays: the label is the law, and some products need a licence. This page gives no"
                    + " rates and recommends no product.")));
  }

  static Section howToRead() {
    return new Section(
        "how-to-read",
        "How to read this page",
        List.of(
            Bullets.of(
                List.of(
                    "\"About 8 in 10 (likely 63 to 90 %)\": our best estimate is 8 grafts in 10;"
                        + " the true value for grafts like these is likely to lie between 63 and 90"
                        + " in 100. A wide range means few grafts.",
                    "\"As counted\" is what happened. \"All else being equal\" is what we would"
                        + " expect had all been grafted in the same mix of seasons, hands, stocks"
                        + " and budwood; it is drawn toward the middle where grafts are few.",
                    "\"Can't tell\" is a result: the records don't decide the question.",
                    "\"Points\" are grafts in 100: from 70 % to 60 % is 10 points.",
                    "Members who send in records are not a random sample, and seasons differ. Take"
                        + " is not yield, not health, not a lasting union; and what goes with take"
                        + " need not be its cause."))));
  }

  static Section aboutTheNumbers(SeasonFacts facts) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraph(rows(facts)));
    blocks.add(new Paragraph(privacy(facts)));
    overTime(facts).forEach(sentence -> blocks.add(new Paragraph(sentence)));
    if (!facts.options().sendTo().isBlank()) {
      blocks.add(new Paragraph("How to send in your results: " + facts.options().sendTo()));
    }
    blocks.add(
        new Fold(
            new Section(
                "methods",
                "For those who want to know how it was worked out",
                List.of(new Paragraph(METHOD)))));
    return new Section("about", "Where the numbers come from", blocks);
  }

  private static String rows(SeasonFacts facts) {
    Provenance provenance = facts.records().provenance();
    long looks =
        facts.records().problems().stream()
            .filter(problem -> problem.severity() == org.taketally.terms.Severity.CHECK)
            .count();
    return "%s read: %s used, %s set aside because they couldn't be understood; %s to be looked at."
        .formatted(
            Words.count(provenance.rowsRead(), "row"),
            Words.count(provenance.rowsKept()),
            Words.count(provenance.rowsSetAside()),
            Words.count(looks, "value"));
  }

  /** What mustn't be published twice, and what was held back because of earlier pages. */
  private static List<String> overTime(SeasonFacts facts) {
    List<String> sentences = new ArrayList<>();
    if (facts.joint().isEmpty() && facts.options().before().pages().isEmpty()) {
      sentences.add(
          "For whoever publishes: the file of published counts beside this page lets the next page"
              + " be checked against this one. If an earlier page of these records is out and its"
              + " file is lost, don't publish this one: counts of a season, cultivar or rootstock"
              + " that stand on both can be subtracted, and the difference may be one member's"
              + " result.");
    }
    if (facts.heldBack() > 0) {
      sentences.add(
          "%s came in after an earlier page and can't be counted here yet: beside that page they would stand alone. The estimates allow for them."
              .formatted(Words.count(facts.heldBack(), "graft")));
    }
    if (!facts.changedSeasons().isEmpty()) {
      sentences.add(
          "Counts of %s are not repeated here: they have changed since they were published, and the difference could be one member's result."
              .formatted(Words.list(facts.changedSeasons())));
    }
    return sentences;
  }

  private static String privacy(SeasonFacts facts) {
    PrivacyRule rule = facts.options().rule();
    Evidence evidence = facts.evidence();
    if (facts.joint().isPresent()) {
      return JointWords.withheld(evidence);
    }
    String text =
        ("Privacy: a line stands by itself only if it holds at least %d grafts by at least %d"
                + " members, none of whom made more than %s of them; where none or all took, %d"
                + " members. The rest is counted together, and so that it can't be worked out by"
                + " subtraction, sometimes more. Names of members and sites, and notes, are never"
                + " shown.")
            .formatted(
                rule.grafts(),
                rule.members(),
                Words.percent(rule.largestShare()),
                Math.max(rule.members(), rule.membersForExtremes()));
    long unnamed = evidence.unnamedGrafts();
    return unnamed == 0
        ? text
        : text
            + " %s without a grafter's name count for no member."
                .formatted(Words.count(unnamed, "graft"));
  }
}
