/**
 * Takes of lots in a season to come, with everything uncertain in them. Start at {@link
 * org.taketally.plan.forecast.SeasonForecast#of}.
 */
package org.taketally.plan.forecast;
