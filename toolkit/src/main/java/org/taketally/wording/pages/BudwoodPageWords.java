package org.taketally.wording.pages;

import org.taketally.plan.order.BudwoodPlan;

/** The page of requests for budwood in words. */
public final class BudwoodPageWords {

  /** Title of the page. */
  public static final String TITLE = "Budwood to cut";

  /** What the page is. */
  public static final String LEAD = "What to cut for the requests, and when.";

  /** Heading of the requests. */
  public static final String REQUESTS = "Request by request";

  private BudwoodPageWords() {}

  /**
   * Caption of the requests.
   *
   * @param plan what to cut and when
   * @return a few words
   */
  public static String caption(BudwoodPlan plan) {
    return "planned from " + plan.today();
  }
}
