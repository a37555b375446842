package org.taketally.wording;

import java.util.List;

/** What a table is made of, as its writer needs it. */
interface TableParts {

  String name();

  String caption();

  List<AnswerColumn> columns();

  List<List<Object>> rows();
}
