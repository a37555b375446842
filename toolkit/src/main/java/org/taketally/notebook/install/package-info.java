/**
 * Makes the kernel known to Jupyter on this machine. Start at {@link
 * org.taketally.notebook.install.KernelInstall}. Fetches nothing.
 */
package org.taketally.notebook.install;
