/**
 * Runs cells of Java: the engine behind the kernel and the notebook runner. Start at {@link
 * org.taketally.notebook.kernel.engine.Engine}. Knows nothing of sockets or files of notebooks. Its
 * rooms, each using only those before it: {@code source} reads Java text, {@code output} is what
 * comes out of a cell, {@code threads} runs and stops code.
 */
package org.taketally.notebook.kernel.engine;
