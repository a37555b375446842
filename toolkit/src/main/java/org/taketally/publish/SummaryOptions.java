package org.taketally.publish;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.publish.privacy.PublishedBefore;
import org.taketally.wording.language.Language;

/**
 * What the person publishing may choose. Immutable: {@code SummaryOptions.defaults().circle("Halden
 * Bay growers' circle")}.
 *
 * @param circle who publishes; empty to leave it out
 * @param season the season the page is about; empty for the latest in the records
 * @param rule when a line may be shown
 * @param sendTo how members send in their results; empty to leave it out
 * @param members how many people made the grafts, where the records don't say; empty if nobody
 *     knows
 * @param before what has been published already
 * @param language of the page
 */
public record SummaryOptions(
    String circle,
    Optional<String> season,
    PrivacyRule rule,
    String sendTo,
    OptionalInt members,
    PublishedBefore before,
    Language language) {

  public SummaryOptions {
    Objects.requireNonNull(circle, "circle");
    Objects.requireNonNull(season, "season");
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(sendTo, "sendTo");
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(language, "language");
    if (members.isPresent() && members.getAsInt() < 1) {
      throw new IllegalArgumentException(
          "the number of people must be 1 or more, got " + members.getAsInt());
    }
  }

  /**
   * The defaults.
   *
   * @return no name, the latest season, the usual privacy rule
   */
  public static SummaryOptions defaults() {
    return new SummaryOptions(
        "",
        Optional.empty(),
        PrivacyRule.usual(),
        "",
        OptionalInt.empty(),
        PublishedBefore.nothing(),
        Language.ENGLISH);
  }

  /**
   * Published by someone.
   *
   * @param name of the club, nursery or project
   * @return changed options
   */
  public SummaryOptions circle(String name) {
    return new SummaryOptions(name, season, rule, sendTo, members, before, language);
  }

  /**
   * About one season.
   *
   * @param name as in the records
   * @return changed options
   */
  public SummaryOptions season(String name) {
    return new SummaryOptions(circle, Optional.of(name), rule, sendTo, members, before, language);
  }

  /**
   * With another privacy rule.
   *
   * @param other e.g. {@link PrivacyRule#strict()}
   * @return changed options
   */
  public SummaryOptions rule(PrivacyRule other) {
    return new SummaryOptions(circle, season, other, sendTo, members, before, language);
  }

  /**
   * With a word on how to send results.
   *
   * @param words one sentence
   * @return changed options
   */
  public SummaryOptions sendTo(String words) {
    return new SummaryOptions(circle, season, rule, words, members, before, language);
  }

  /**
   * Made from the grafts of so many people, where the records don't say who grafted.
   *
   * @param people 1 or more
   * @return changed options
   */
  public SummaryOptions members(int people) {
    return new SummaryOptions(
        circle, season, rule, sendTo, OptionalInt.of(people), before, language);
  }

  /**
   * Beside pages published already.
   *
   * @param earlier their counts
   * @return changed options
   */
  public SummaryOptions before(PublishedBefore earlier) {
    return new SummaryOptions(circle, season, rule, sendTo, members, earlier, language);
  }

  /**
   * In a language.
   *
   * @param other than English
   * @return changed options
   */
  public SummaryOptions language(Language other) {
    return new SummaryOptions(circle, season, rule, sendTo, members, before, other);
  }
}
