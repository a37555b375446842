/**
 * What may be published about grafts without telling on a member. Start at {@link
 * org.taketally.publish.privacy.Disclosure#tables}. Counts people, not only grafts, and sees to it
 * that nothing left out comes back by subtraction.
 */
package org.taketally.publish.privacy;
