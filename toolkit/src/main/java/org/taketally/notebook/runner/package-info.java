/**
 * Runs notebooks from top to bottom without Jupyter, on the kernel's own engine, and makes pages of
 * them. Start at {@link org.taketally.notebook.runner.NotebookRunner}:
 *
 * <pre>{@code
 * RunReport report = NotebookRunner.with(RunOptions.usual()).run(Path.of("rootstock.ipynb"));
 * report.notebook().write(Path.of("executed/rootstock.ipynb"));
 * report.failure().ifPresent(failed -> System.err.println(failed.sentence()));
 * }</pre>
 *
 * Knows nothing of graft records.
 */
package org.taketally.notebook.runner;
