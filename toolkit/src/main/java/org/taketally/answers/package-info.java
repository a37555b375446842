/**
 * What a fit means: difficulty, the rootstock verdict, what moves take. Small records, one row per
 * statement; draws nothing.
 */
package org.taketally.answers;
