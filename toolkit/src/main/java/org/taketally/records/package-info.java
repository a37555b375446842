/**
 * Reads graft records and says whether they can be trusted. The only reader of graft files; it
 * never repairs a value silently.
 */
package org.taketally.records;
