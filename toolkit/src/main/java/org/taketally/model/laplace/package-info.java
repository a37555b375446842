/**
 * The likelihood: from counts per cell, standard deviations and effects to a log-likelihood, its
 * slope, and the modes. Start at {@link org.taketally.model.laplace.BlockLaplace}; used by the
 * model only.
 */
package org.taketally.model.laplace;
