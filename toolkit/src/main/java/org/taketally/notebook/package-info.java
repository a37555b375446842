/** Work on graft records in Jupyter: kernel, displays and a notebook runner. */
package org.taketally.notebook;
