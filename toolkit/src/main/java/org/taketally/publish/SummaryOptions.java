package org.taketally.publish;

import java.util.Objects;
import java.util.Optional;
import org.taketally.publish.privacy.PrivacyRule;

/**
 * What the person publishing may choose. Immutable: {@code SummaryOptions.defaults().circle("Halden
 * Bay growers' circle")}.
 *
 * @param circle who publishes; empty to leave it out
 * @param season the season the page is about; empty for the latest in the records
 * @param rule when a line may be shown
 * @param sendTo how members send in their results; empty to leave it out
 */
public record SummaryOptions(
    String circle, Optional<String> season, PrivacyRule rule, String sendTo) {

  public SummaryOptions {
    Objects.requireNonNull(circle, "circle");
    Objects.requireNonNull(season, "season");
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(sendTo, "sendTo");
  }

  /**
   * The defaults.
   *
   * @return no name, the latest season, the usual privacy rule
   */
  public static SummaryOptions defaults() {
    return new SummaryOptions("", Optional.empty(), PrivacyRule.usual(), "");
  }

  /**
   * Published by someone.
   *
   * @param name of the club, nursery or project
   * @return changed options
   */
  public SummaryOptions circle(String name) {
    return new SummaryOptions(name, season, rule, sendTo);
  }

  /**
   * About one season.
   *
   * @param name as in the records
   * @return changed options
   */
  public SummaryOptions season(String name) {
    return new SummaryOptions(circle, Optional.of(name), rule, sendTo);
  }

  /**
   * With another privacy rule.
   *
   * @param other e.g. {@link PrivacyRule#strict()}
   * @return changed options
   */
  public SummaryOptions rule(PrivacyRule other) {
    return new SummaryOptions(circle, season, other, sendTo);
  }

  /**
   * With a word on how to send results.
   *
   * @param words one sentence
   * @return changed options
   */
  public SummaryOptions sendTo(String words) {
    return new SummaryOptions(circle, season, rule, words);
  }
}
