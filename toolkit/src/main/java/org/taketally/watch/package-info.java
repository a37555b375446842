/**
 * Whether the running season is going wrong. Start at {@link org.taketally.watch.TakeWatch#of}.
 * Never writes records.
 */
package org.taketally.watch;
