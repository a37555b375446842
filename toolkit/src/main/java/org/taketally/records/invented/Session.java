package org.taketally.records.invented;

import java.time.LocalDate;

/**
 * One grafter on one day at one site.
 *
 * @param season the season
 * @param site the site
 * @param grafter who held the knife
 * @param date the day
 * @param progress how far the season has come, 0 to 1
 * @param airTempC warmest hour of the day
 */
record Session(
    String season, String site, String grafter, LocalDate date, double progress, int airTempC) {}
