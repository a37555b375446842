/**
 * What to graft next so that records in hand settle whether the rootstock matters. Start at {@link
 * org.taketally.plan.next.NextTrialPlanner#of}.
 */
package org.taketally.plan.next;
