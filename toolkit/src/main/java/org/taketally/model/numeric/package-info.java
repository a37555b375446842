/**
 * Plain mathematics of the model: small and dense matrices, curves, quadrature, boxed steps. Knows
 * no levels, grafts or takes; used by the model only.
 */
package org.taketally.model.numeric;
