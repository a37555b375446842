/**
 * A Jupyter kernel for Java. Start at {@link org.taketally.notebook.kernel.Kernel}. Serves any Java
 * work: it imports nothing of the rest of the toolkit.
 */
package org.taketally.notebook.kernel;
