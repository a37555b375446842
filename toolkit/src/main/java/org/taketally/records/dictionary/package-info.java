/** What a person says of a foreign sheet. Start at {@link SheetDictionary}. Opens no sheet. */
package org.taketally.records.dictionary;
