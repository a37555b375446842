/**
 * Can the records be trusted: rules for rows, and what shows only over all of them. Start at {@link
 * RowRules}. Changes no value.
 */
package org.taketally.records.checks;
