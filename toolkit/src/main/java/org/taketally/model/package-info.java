/**
 * Binomial mixed model of graft takes. Reads no files, knows no table library, prints and draws
 * nothing.
 */
package org.taketally.model;
