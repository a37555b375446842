/** Control charts: weights, limits and how many steps pass until a false alarm. */
package org.taketally.watch.chart;
