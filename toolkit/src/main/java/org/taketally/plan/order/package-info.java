/**
 * How many grafts to make, and sticks to cut, for the trees wanted. Start at {@link
 * org.taketally.plan.order.GraftOrder#of}.
 */
package org.taketally.plan.order;
