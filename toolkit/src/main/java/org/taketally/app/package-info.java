/** The command line. Wires the other packages together and has no rules of its own. */
package org.taketally.app;
