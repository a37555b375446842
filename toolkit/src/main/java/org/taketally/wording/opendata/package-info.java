/**
 * Open data in words: titles of files, meanings of columns, the headings of open standards, the
 * page that explains a package. Values in, sentences out; writes no file.
 */
package org.taketally.wording.opendata;
