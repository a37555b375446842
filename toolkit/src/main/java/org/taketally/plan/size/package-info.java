/**
 * How large a trial must be. Start at {@link org.taketally.plan.size.TrialSize#of}; what a layout
 * could show is {@link org.taketally.plan.size.VerdictChances}.
 */
package org.taketally.plan.size;
