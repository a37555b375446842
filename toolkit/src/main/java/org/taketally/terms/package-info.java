/**
 * Words all other packages share: cultivars, intervals, problems, crop profiles. Start at {@link
 * org.taketally.terms.Interval}. Holds no logic beyond checks.
 */
package org.taketally.terms;
