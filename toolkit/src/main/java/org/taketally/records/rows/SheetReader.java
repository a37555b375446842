package org.taketally.records.rows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.Remarks;
import org.taketally.records.columns.TotalWords;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.Finding;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.Trim;
import org.taketally.terms.Severity;

/** Turns the raw rows of one sheet into typed rows, reporting what can't be read. */
public final class SheetReader {

  private static final int NO_FIELD = -1;

  private final Headings headings;
  private final SheetRules rules;
  private final RecordsLayout layout;
  private final List<ColumnReader> columns = new ArrayList<>();
  private final List<Constant> constants = new ArrayList<>();
  private final String[] headingOf;
  private final int extraField;
  private final int[] fieldOf;
  private final boolean[] converts;
  private final SheetSurvey survey;
  private final DaysByPerson days;
  private final SheetSurvey.Example share;
  private final boolean counts;
  private RawRow current;

  private record Constant(int place, FieldValue value) {}

  public SheetReader(RowSource source, Headings headings, SheetRules rules, RecordsLayout layout) {
    this.headings = headings;
    this.rules = rules;
    this.layout = layout;
    this.extraField = headings.all().indexOf(SetAside.EXTRA);
    this.survey = SheetSurvey.of(source, headings, rules);
    this.share =
        survey.shown(RecordColumn.TAKES.columnName(), SheetSurvey.Doubt.SHARES).orElse(null);
    this.counts =
        survey.shown(RecordColumn.TAKES.columnName(), SheetSurvey.Doubt.COUNTS).isPresent();
    this.days = rules.datesBy().map(by -> new DaysByPerson(by, headings)).orElse(null);
    FieldReaders readers = new FieldReaders(rules, source.semicolons(), survey);
    for (Map.Entry<Integer, String> one : headings.meaning().entrySet()) {
      columns.add(column(one.getKey(), one.getValue(), readers, layout));
    }
    rules.constants().forEach((name, value) -> constant(name, value, readers, layout));
    headingOf = new String[layout.size()];
    converts = new boolean[layout.size()];
    for (int place = 0; place < headingOf.length; place++) {
      headingOf[place] = layout.track(place).name();
      converts[place] = rules.column(headingOf[place]).unit().isPresent();
    }
    fieldOf = new int[layout.size()];
    Arrays.fill(fieldOf, NO_FIELD);
    for (ColumnReader column : columns) {
      headingOf[column.place()] = column.heading();
      fieldOf[column.place()] = column.field();
    }
  }

  private ColumnReader column(int field, String name, FieldReaders readers, RecordsLayout layout) {
    int place = layout.place(name);
    ColumnTrack track = layout.track(place);
    track.markPresent();
    ColumnReader.SheetColumn sheet =
        new ColumnReader.SheetColumn(
            field,
            headings.heading(field),
            place,
            rules.missing(name),
            KnownColumns.rule(name).needed());
    return new ColumnReader(
        sheet, readers.reader(track), track.own() || track.kind() != ColumnKind.TEXT);
  }

  private void constant(String name, String value, FieldReaders readers, RecordsLayout layout) {
    if (headings.has(name)) {
      throw headings.unreadable(
          name, "no such column, because the dictionary gives it as a constant", "take one out");
    }
    ColumnTrack track = layout.track(layout.place(name));
    track.markPresent();
    FieldValue read = readers.reader(track).read(Trim.trim(value), true);
    if (read.isError()) {
      throw headings.unreadable(
          value,
          read.finding().expected() + " as constant " + name,
          "correct it in the dictionary");
    }
    constants.add(new Constant(layout.place(name), read));
  }

  /** Fills a cleared row; false if its fields don't fit the headings. */
  public boolean read(RawRow raw, RecordRow row, RowReport report) {
    current = raw;
    for (Constant constant : constants) {
      row.set(constant.place(), constant.value());
    }
    if (!fits(raw, report) || isRemark(raw, report) || headsAgain(raw, report)) {
      return false;
    }
    String[] fields = raw.fields();
    for (ColumnReader column : columns) {
      String text = fields[column.field()];
      FieldValue value = value(column, raw, text);
      row.set(column.place(), value);
      Finding finding = value.finding();
      if (finding != null && TotalWords.isSum(text) && value.isError()) {
        finding = NameReader.TOTAL.finding(); // beside a sum, where a day or a number belongs
      }
      if (finding != null) {
        report(finding, text, column, report);
      }
    }
    return true;
  }

  /** A day is read as the person writes days who wrote the row, if the dictionary says so. */
  private FieldValue value(ColumnReader column, RawRow raw, String text) {
    boolean day =
        days != null
            && layout.track(column.place()).kind() == ColumnKind.DATE
            && column.recorded(text);
    return day
        ? days.read(raw.fields(), Trim.trim(text))
        : column.read(text, raw.exact(column.field()));
  }

  /** A row without a name or result can't be used; one without a day or a diameter can. */
  private void report(Finding finding, String text, ColumnReader column, RowReport report) {
    boolean error = finding.kind().severity() == Severity.ERROR;
    if (error && finding.kind() != ProblemKind.SUMMARY_ROW && !layout.essential(column.place())) {
      report.addUnread(
          finding.kind(),
          column.heading(),
          () ->
              new ProblemText(
                  text,
                  finding.expected(),
                  finding.remedy() + "; read as not recorded until then"));
    } else {
      report.add(
          finding.kind(),
          column.heading(),
          () -> new ProblemText(text, finding.expected(), finding.remedy()));
    }
  }

  private boolean fits(RawRow raw, RowReport report) {
    String[] fields = raw.fields();
    int expected = headings.all().size();
    if (fields.length < expected) {
      return misfit(report, fields.length + " fields", expected);
    }
    for (int i = 0; i < fields.length; i++) {
      boolean noHeading = i >= expected || headings.heading(i).isEmpty() || i == extraField;
      if (noHeading && !Trim.trim(fields[i]).isEmpty()) {
        return misfit(report, fields[i], expected);
      }
    }
    return true;
  }

  /** A sentence alone in its row is no graft, whatever column it stands in. */
  private boolean isRemark(RawRow raw, RowReport report) {
    int lone = -1;
    for (ColumnReader column : columns) {
      if (!Trim.isBlank(raw.fields()[column.field()])) {
        if (lone >= 0) {
          return false;
        }
        lone = column.field();
      }
    }
    if (columns.size() < 2 || lone < 0) {
      return false;
    }
    String found = Trim.trim(raw.fields()[lone]);
    boolean heads = rules.shape().fillDown().contains(headings.heading(lone));
    if (!heads && !Remarks.isRemark(found)) {
      return false;
    }
    String takenFor = heads && !Remarks.isRemark(found) ? "the name of the rows below" : "a remark";
    report.add(
        ProblemKind.REMARK_ROW,
        headings.heading(lone),
        () ->
            new ProblemText(
                found,
                "one graft or batch in each row, and this stands alone in its row",
                "taken for %s and not counted; take it out, or fill in the row if it is a graft"
                    .formatted(takenFor)));
    return true;
  }

  /** The line of headings once more, as above a second table. */
  private boolean headsAgain(RawRow raw, RowReport report) {
    for (ColumnReader column : columns) {
      if (!Trim.trim(raw.fields()[column.field()]).equals(column.heading())) {
        return false;
      }
    }
    String found = String.join(", ", headings.all());
    report.add(
        ProblemKind.HEADINGS_AGAIN,
        "",
        () ->
            new ProblemText(
                found,
                "the headings once, above all rows",
                "take this line out; where a second table begins here, of another season or place,"
                    + " write that into a column of its own in both tables first, or nothing tells"
                    + " them apart"));
    return true;
  }

  private static boolean misfit(RowReport report, String found, int expected) {
    report.add(
        ProblemKind.RAGGED_ROW,
        "",
        () ->
            new ProblemText(
                found,
                expected + " fields, each under a heading",
                "look for a missing or an extra delimiter, or a line break inside a field, and put"
                    + " each value under its heading"));
    return false;
  }

  /** The heading of a column as spelt in this sheet. */
  public String heading(RecordColumn column) {
    return headingOf[RecordsLayout.place(column)];
  }

  public String heading(int place) {
    return headingOf[place];
  }

  public SheetRules rules() {
    return rules;
  }

  /** What stands in a column of the row read last, as typed. */
  public String typed(RecordColumn column) {
    int field = fieldOf[RecordsLayout.place(column)];
    return field == NO_FIELD || field >= current.fields().length
        ? ""
        : Trim.trim(current.fields()[field]);
  }

  /** The heading of the dead counted beside grafts and takes, if there is one. */
  public Optional<String> deadHeading() {
    return headings.dead() < 0 ? Optional.empty() : Optional.of(headings.heading(headings.dead()));
  }

  /** What stands under {@link #deadHeading} in the row read last, as typed. */
  public String typedDead() {
    return headings.dead() < current.fields().length
        ? Trim.trim(current.fields()[headings.dead()])
        : "";
  }

  /** Whether nothing stands in a column of the row read last. */
  public boolean blank(RecordColumn column) {
    int field = fieldOf[RecordsLayout.place(column)];
    return field == NO_FIELD
        || field >= current.fields().length
        || Trim.isBlank(current.fields()[field]);
  }

  /** Whether every name of the row read last that stands once for several came from above. */
  public boolean continued() {
    return current.continued();
  }

  /** Whether numbers of a column are in another unit than ours. */
  public boolean converts(RecordColumn column) {
    return converts[RecordsLayout.place(column)];
  }

  /** What was seen before reading. */
  public SheetSurvey survey() {
    return survey;
  }

  /** A take that is a share of the grafts, so that a 1 in this sheet may mean all of them. */
  public Optional<SheetSurvey.Example> share() {
    return Optional.ofNullable(share);
  }

  /**
   * Whether a blank under grafts can't be taken for one graft: the sheet counts them, or the row
   * was set aside before and what else its sheet held isn't known.
   */
  public boolean countsGrafts() {
    return reads(RecordColumn.GRAFTS) && (extraField != NO_FIELD || batch().isPresent());
  }

  /** A count of grafts above 1. */
  public Optional<SheetSurvey.Example> batch() {
    return survey.shown(RecordColumn.GRAFTS.columnName(), SheetSurvey.Doubt.COUNTS);
  }

  /** Whether takes above 1 show that takes are counts, though some have a decimal sign. */
  public boolean counts() {
    return counts;
  }

  public Map<String, String> spellings(RecordColumn column) {
    return rules.column(column.columnName()).same();
  }

  public boolean reads(RecordColumn column) {
    return fieldOf[RecordsLayout.place(column)] != NO_FIELD;
  }

  /** The fields as typed; numbers of workbook cells with the decimal sign of this sheet. */
  public List<String> asTyped(RawRow raw) {
    String[] fields = raw.fields().clone();
    for (ColumnReader column : columns) {
      int field = column.field();
      boolean comma =
          rules.decimal(headings.meaning().get(field)).filter(sign -> sign == ',').isPresent();
      if (comma && field < fields.length && raw.exact(field)) {
        fields[field] = fields[field].replace('.', ',');
      }
    }
    return Arrays.asList(fields);
  }
}
