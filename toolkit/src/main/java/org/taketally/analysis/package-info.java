/**
 * The door: start at {@link org.taketally.analysis.Analysis}, which fits records and finds every
 * answer of the register {@link org.taketally.analysis.AnswerRegister}. Says nothing in words.
 */
package org.taketally.analysis;
