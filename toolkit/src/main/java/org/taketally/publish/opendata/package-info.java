/**
 * Records and answers as open data: a Data Package other programs read, whose records read back to
 * the same answers. Start at {@link DataPackage#of}. Decides nothing, draws nothing.
 */
package org.taketally.publish.opendata;
