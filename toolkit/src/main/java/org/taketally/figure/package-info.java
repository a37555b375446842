/** Answers, plans and alarms as accessible SVG text. Never computes statistics. */
package org.taketally.figure;
