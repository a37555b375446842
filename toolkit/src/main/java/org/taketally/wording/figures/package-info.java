/**
 * What figures say: titles, keys, axes, notes and descriptions for those who can't see them. Values
 * in, texts out; draws nothing. Figures of the season page in every language, the others in
 * English.
 */
package org.taketally.wording.figures;
