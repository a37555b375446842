/**
 * The season page for members: HTML, Markdown and CSV in plain language. Decides no verdict of its
 * own.
 */
package org.taketally.publish;
