/**
 * How often the verdict is wrong: simulated trials of known truth go from CSV through reading and
 * the suggested model to the verdict. Start at {@link org.taketally.study.StudyRun}; the kinds of
 * trial stand in {@link org.taketally.study.StudyKinds}.
 */
package org.taketally.study;
