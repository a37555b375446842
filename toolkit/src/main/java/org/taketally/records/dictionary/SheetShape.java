package org.taketally.records.dictionary;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;

/**
 * How a sheet is laid out.
 *
 * @param headingRow line in which the headings stand, 1 where not said
 * @param wide the parts of a wide sheet, none where its rows are long
 * @param fillDown headings under which a blank means the same as above, as merged cells leave it
 * @param counts days after grafting to the heading that holds how many were alive then
 */
public record SheetShape(
    int headingRow, List<WidePart> wide, Set<String> fillDown, SortedMap<Integer, String> counts) {

  SheetShape withHeadingsFirst() {
    return new SheetShape(1, wide, fillDown, counts);
  }
}
