/** Runs code of cells, stops it, and keeps it from ending the process. Shows nothing. */
package org.taketally.notebook.kernel.engine.threads;
