/**
 * Words all other packages share: intervals, problems, crop profiles, the logit, quantiles. Start
 * at {@link org.taketally.terms.Interval}. Holds no logic beyond checks and plain formulas.
 */
package org.taketally.terms;
