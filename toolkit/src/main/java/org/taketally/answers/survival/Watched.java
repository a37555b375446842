package org.taketally.answers.survival;

import java.util.List;

/**
 * A lot of grafts watched after they had taken.
 *
 * @param name what is compared, e.g. the rootstock
 * @param stratum what it is compared within, e.g. the cultivar; the same text everywhere if nothing
 * @param grafts the grafts, any number
 */
public record Watched(String name, String stratum, List<FollowUp> grafts) {

  public Watched {
    grafts = List.copyOf(grafts);
  }

  /**
   * A lot compared without strata.
   *
   * @param name what is compared
   * @param grafts the grafts
   * @return the lot, stratum empty
   */
  public static Watched of(String name, List<FollowUp> grafts) {
    return new Watched(name, "", grafts);
  }
}
