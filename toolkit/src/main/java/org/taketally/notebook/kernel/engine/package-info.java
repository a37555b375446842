/**
 * Runs cells of Java: the engine behind the kernel and the notebook runner. Start at {@link
 * org.taketally.notebook.kernel.engine.Engine}. Knows nothing of sockets or files of notebooks.
 */
package org.taketally.notebook.kernel.engine;
