/**
 * Which graft goes where: randomised layouts of trials and what they can compare. Start at {@link
 * org.taketally.plan.layout.TrialLayout#of}.
 */
package org.taketally.plan.layout;
