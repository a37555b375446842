/**
 * Jupyter's messages over ZeroMQ sockets: connection file, signing, one loop per channel. Start at
 * {@link org.taketally.notebook.kernel.wire.MessageSocket}. Knows nothing of Java code or cells.
 */
package org.taketally.notebook.kernel.wire;
