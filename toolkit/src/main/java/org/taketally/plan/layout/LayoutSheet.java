package org.taketally.plan.layout;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.files.Csv;
import org.taketally.records.columns.RecordColumn;

/**
 * A layout as a sheet to fill in: the columns of graft records, one row a plot, with the takes left
 * empty. Once takes (and dates not fixed yet) are filled in it reads as records.
 */
public final class LayoutSheet {

  private static final List<RecordColumn> COLUMNS =
      List.of(
          RecordColumn.RECORD,
          RecordColumn.SEASON,
          RecordColumn.SITE,
          RecordColumn.BLOCK,
          RecordColumn.GRAFTER,
          RecordColumn.CULTIVAR,
          RecordColumn.ROOTSTOCK,
          RecordColumn.GRAFT_DATE,
          RecordColumn.ASSESSED_DATE,
          RecordColumn.GRAFTS,
          RecordColumn.TAKES,
          RecordColumn.NOTES);

  private final TrialLayout layout;
  private final String site;

  private LayoutSheet(TrialLayout layout, String site) {
    this.layout = layout;
    this.site = site;
  }

  /**
   * A sheet.
   *
   * @param layout which graft goes where
   * @param site where the trial stands; may be blank
   * @return the sheet
   */
  public static LayoutSheet of(TrialLayout layout, String site) {
    return new LayoutSheet(layout, site);
  }

  /**
   * The sheet as text.
   *
   * @return CSV with a heading line; a day that is no date stands in the notes
   */
  public String csv() {
    List<List<String>> lines = new ArrayList<>();
    lines.add(COLUMNS.stream().map(RecordColumn::columnName).toList());
    layout.plots().forEach(plot -> lines.add(row(plot)));
    return Csv.text(lines);
  }

  private List<String> row(Plot plot) {
    List<String> row = new ArrayList<>();
    for (RecordColumn column : COLUMNS) {
      row.add(
          switch (column) {
            case RECORD -> label(plot);
            case SEASON -> date(plot).map(day -> String.valueOf(day.getYear())).orElse("");
            case SITE -> site;
            case BLOCK -> plot.bed().orElse(plot.block());
            case GRAFTER -> plot.session().grafter();
            case CULTIVAR -> plot.pairing().cultivar();
            case ROOTSTOCK -> plot.pairing().rootstock();
            case GRAFT_DATE -> date(plot).map(LocalDate::toString).orElse("");
            case GRAFTS -> String.valueOf(plot.grafts());
            case NOTES -> date(plot).isPresent() ? "" : plot.session().day();
            default -> "";
          });
    }
    return row;
  }

  /**
   * The label of a plot, as long as that of the last one.
   *
   * @param plot of the layout
   * @return e.g. {@code P07}
   */
  public String label(Plot plot) {
    int digits = String.valueOf(layout.plots().size()).length();
    return "P" + "0".repeat(digits - String.valueOf(plot.number()).length()) + plot.number();
  }

  private static Optional<LocalDate> date(Plot plot) {
    try {
      return Optional.of(LocalDate.parse(plot.session().day()));
    } catch (DateTimeParseException notADate) {
      return Optional.empty();
    }
  }
}
