package org.taketally.publish.privacy;

/**
 * When a group of grafts may be shown. Thresholds of 10 and of 3 or 5 are common in official
 * statistics; the largest share is common practice, no source.
 *
 * @param grafts fewest grafts, at least 1
 * @param members fewest members who made them, at least 1
 * @param largestShare largest share one member may hold, above 0, at most 1
 * @param membersForExtremes fewest members where none or all took, since then each member's own
 *     result is known
 * @see <a href="https://stats.oecd.org/glossary/detail.asp?ID=7010">OECD glossary, threshold
 *     rule</a>
 */
public record PrivacyRule(int grafts, int members, double largestShare, int membersForExtremes) {

  public PrivacyRule {
    if (grafts < 1 || members < 1 || membersForExtremes < 1) {
      throw new IllegalArgumentException(
          "grafts and members must be 1 or more, got %d, %d and %d"
              .formatted(grafts, members, membersForExtremes));
    }
    if (!(largestShare > 0 && largestShare <= 1)) {
      throw new IllegalArgumentException(
          "the largest share must lie above 0 and at most at 1, got " + largestShare);
    }
  }

  /**
   * For a circle whose members know and trust each other.
   *
   * @return 10 grafts by 3 members, none with over 80 %; 5 members where none or all took
   */
  public static PrivacyRule usual() {
    return new PrivacyRule(10, 3, 0.8, 5);
  }

  /**
   * For a page that leaves the circle.
   *
   * @return as {@link #usual()}, with 5 members
   */
  public static PrivacyRule strict() {
    return new PrivacyRule(10, 5, 0.8, 5);
  }
}
