/**
 * Fits compared: {@link org.taketally.model.compare.LikelihoodRatioTest} of two fits, {@link
 * org.taketally.model.compare.Profiles} of one, {@link org.taketally.model.compare.Bootstrap} by
 * simulation. Uses fits, and the model never uses it.
 */
package org.taketally.model.compare;
