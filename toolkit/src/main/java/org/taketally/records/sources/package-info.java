/** Files and queries to raw rows: text, nothing understood yet. Start at {@link SourceFiles}. */
package org.taketally.records.sources;
