/**
 * What is wrong with records, and where: kinds of problems, their places and words, and how many
 * there are. Start at {@link ProblemKind}. Knows no rule.
 */
package org.taketally.records.problems;
