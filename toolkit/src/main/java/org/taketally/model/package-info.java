/**
 * Binomial mixed model of graft takes. Start at {@link org.taketally.model.TakeModel}. Reads no
 * files, knows no table library, prints and draws nothing.
 *
 * <p>Notation, used in every class here:
 *
 * <pre>
 *   y, n      takes and grafts of each cell              eta     logit of take, eta = X beta + Z b
 *   X, beta   fixed columns and effects                  mu, w   take 1/(1+exp(-eta)), weight n mu (1-mu)
 *   Z, b      level indicators and deviations            theta   standard deviation of each varying column
 *   u         deviations / theta, N(0, 1)                tau     theta^2
 *   Lambda    diagonal of theta, one entry a level       H       Lambda Z'WZ Lambda + I
 *   h(u)    = sum[ y eta - n log(1 + exp(eta)) ] - u'u / 2
 *   log L   = h(u*) - log|H| / 2                         u*      maximises h
 *   C       = inverse of H, only at the positions of pairs of levels met in a cell
 *   v         variance of eta of each cell given theta and beta
 * </pre>
 */
package org.taketally.model;
