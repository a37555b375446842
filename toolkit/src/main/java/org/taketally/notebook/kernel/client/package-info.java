/**
 * The other end of the wire: drives a kernel as a frontend does. Start at {@link
 * org.taketally.notebook.kernel.client.KernelConnection}.
 */
package org.taketally.notebook.kernel.client;
