package org.taketally.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.taketally.notebook.runner.Notebook;
import org.taketally.notebook.runner.NotebookPage;
import org.taketally.plan.order.BudwoodRequests;
import org.taketally.plan.order.OrderBook;
import org.taketally.records.Assessments;
import org.taketally.records.CropProfiles;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;

/** What is read, how, and what may come of it: a result, or a sentence. */
enum Reading {
  SHEET(
      "sheet.csv",
      """
      record,season,site,grafter,cultivar,rootstock,grafts,takes,graft_date,assessed_date,storage_temp_c,fridge,notes
      R1,2024,Ridge Farm,Maud,Orrin,Halden seedling,12,10,2024-03-04,2024-06-01,5.5,left,"good, dry"
      R2,2024,Ridge Farm,Silas,Brell,Ostrey,10,3,2024-03-05,2024-06-01,6,right,
      R3,2025,Quay,Maud,Orrin,Ostrey,8,8,2025-03-05,2025-06-01,,left,"said ""fine"" twice"
      R4,2025,Quay,Silas,Brell,Halden seedling,9,12,2025-03-09,2025-06-01,7,,
      """) {
    @Override
    void read(Path file) throws IOException {
      readAgain(RecordsReader.defaults(), file);
    }
  },
  DICTIONARY(
      "dictionary.json",
      """
      {
        "delimiter": ";", "decimal": ",", "dates": "dd.MM.yyyy", "missing": ["-", "n/a"],
        "columns": {
          "cultivar": { "from": "Variety", "same": { "Orrin": ["orr."] } },
          "rootstock": "Stock",
          "grafts": "Made", "takes": { "from": "Alive", "unit": "percent" },
          "graft_date": "Day", "storage_temp_c": { "from": "Fridge", "unit": "F" }
        },
        "constants": { "season": "2024" }, "ignore": ["Remarks"],
        "files": { "sheet-*.csv": { "dates": "dd/MM/yyyy" } }
      }
      """) {
    @Override
    void read(Path file) throws IOException {
      Path sheet = file.resolveSibling("sheet-1.csv");
      Files.writeString(
          sheet,
          """
          Variety;Stock;Made;Alive;Day;Fridge;Remarks
          orr.;Ostrey;10;50%;04/03/2024;41,5;x
          Brell;Halden;10;0;05/03/2024;40;=1+1
          """);
      RecordsReader reader = RecordsReader.defaults().withDictionary(SheetDictionary.load(file));
      readAgain(reader, sheet);
    }
  },
  CROP(
      "crop.csv",
      """
      item,value,unit,source
      crop,pear,text,name
      version,1,text,name
      storage_temp_min,1,°C,"common practice, no source"
      storage_temp_max,4,°C,from memory
      assess_early,21,days,from memory
      take_low,0.2,share,from memory
      """) {
    @Override
    void read(Path file) {
      CropProfiles.load(file);
    }
  },
  COUNTS(
      "counts.csv",
      """
      record,assessed_date,alive
      R1,2024-04-01,11
      R1,2024-06-01,10
      R2,2024-06-01,3
      """) {
    @Override
    void read(Path file) throws IOException {
      Path sheet = file.resolveSibling("counted.csv");
      Files.writeString(sheet, SHEET.text);
      RecordsReader reader = RecordsReader.defaults().withToday(TODAY);
      Assessments read = reader.assessments(List.of(file), reader.read(List.of(sheet)));
      read.check().problems().forEach(problem -> assertSentence(problem.sentence()));
      read.setAside().csv();
    }
  },
  NOTEBOOK(
      "notebook.ipynb",
      """
      {"nbformat": 4, "nbformat_minor": 5, "metadata": {"kernelspec": {"name": "taketally", "language": "java"}}, "cells": [
       {"cell_type": "markdown", "id": "a", "metadata": {}, "source": ["# Title\\n", "![x](http://y/z.png)"]},
       {"cell_type": "code", "id": "b", "metadata": {"tags": ["parameters"]}, "execution_count": 1, "source": "int a = 1;", "outputs": [
        {"output_type": "stream", "name": "stdout", "text": ["1\\n"]},
        {"output_type": "execute_result", "execution_count": 1, "metadata": {}, "data": {"text/html": "<b>1</b>", "image/png": "iVBO", "text/plain": ["1"]}},
        {"output_type": "error", "ename": "E", "evalue": "v", "traceback": ["t"]}]}]}
      """) {
    @Override
    void read(Path file) throws IOException {
      Notebook notebook;
      try {
        notebook = Notebook.read(file);
      } catch (IOException told) {
        assertSentence(told.getMessage());
        return;
      }
      notebook.title();
      notebook.text();
      NotebookPage.of(notebook, true);
      NotebookPage.of(notebook, false);
    }
  },
  ORDER_BOOK(
      "orders.csv",
      """
      cultivar,rootstock,trees,due,take,grafts,sticks
      Orrin,Halden seedling,40,2027-10-01,70,,6
      Brell,any,25,,62.5,80,
      "Pembrin, late",Ostrey,10,2027-11-15,30 %,,
      """) {
    @Override
    void read(Path file) {
      OrderBook.read(file).problems().forEach(problem -> assertSentence(problem.sentence()));
    }
  },
  REQUESTS(
      "requests.csv",
      """
      cultivar;sticks;needed;bud_stage;buds;on_tree
      Orrin;12;2027-03-10;dormant;swelling;30
      Brell;5;2027-03-20;;;
      """) {
    @Override
    void read(Path file) {
      BudwoodRequests.read(file).problems().forEach(problem -> assertSentence(problem.sentence()));
    }
  },
  WORKBOOK("workbook.xlsx", "") {
    @Override
    byte[] whole() throws IOException {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      try (Workbook book = new Workbook(out, "Taketally test", "1.0")) {
        Worksheet sheet = book.newWorksheet("2024");
        List<String> headings = List.of("cultivar", "rootstock", "grafts", "takes", "graft_date");
        for (int i = 0; i < headings.size(); i++) {
          sheet.value(0, i, headings.get(i));
        }
        for (int row = 1; row < 5; row++) {
          sheet.value(row, 0, row % 2 == 0 ? "Orrin" : "Brell");
          sheet.value(row, 1, "Ostrey");
          sheet.value(row, 2, 10);
          sheet.value(row, 3, row);
          sheet.value(row, 4, LocalDate.of(2024, 3, row));
          sheet.style(row, 4).format("yyyy-MM-dd").set();
        }
        book.newWorksheet("notes").value(0, 0, "nothing here");
      }
      return out.toByteArray();
    }

    @Override
    byte[] damaged(byte[] whole, Damage damage) throws IOException {
      return damage.pick(4) == 0 ? damage.bytes(whole) : damage.part(whole);
    }

    @Override
    void read(Path file) throws IOException {
      readAgain(RecordsReader.defaults(), file);
    }
  };

  private static final LocalDate TODAY = LocalDate.of(2026, 11, 1);

  final String fileName;
  final String text;

  Reading(String fileName, String text) {
    this.fileName = fileName;
    this.text = text;
  }

  byte[] whole() throws IOException {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  byte[] damaged(byte[] whole, Damage damage) throws IOException {
    return damage.bytes(whole);
  }

  /** Reads a file; returns, or throws {@link RecordsUnreadable}; all else is a fault. */
  abstract void read(Path file) throws IOException;

  /** Counts reconcile, and what is set aside is read again. */
  private static void readAgain(RecordsReader plain, Path file) throws IOException {
    RecordsReader reader = plain.withToday(TODAY);
    GraftRecords records = reader.read(List.of(file));
    records.problems().forEach(problem -> assertSentence(problem.sentence()));
    assertThat(records.provenance().rowsKept()).isEqualTo(records.frame().rowCount());
    assertThat((long) records.setAside().size()).isEqualTo(records.provenance().rowsSetAside());
    if (records.setAside().size() > 0) {
      Path aside = file.resolveSibling("set-aside.csv");
      Files.writeString(aside, records.setAside().csv());
      List<Path> both = new ArrayList<>(List.of(aside));
      try {
        GraftRecords again = reader.read(both);
        assertThat(again.provenance().rowsRead()).isEqualTo(records.setAside().size());
      } catch (RecordsUnreadable told) {
        throw new AssertionError("set aside, but not read again: " + told.getMessage(), told);
      }
    }
  }

  static void assertSentence(String told) {
    assertThat(told).matches(Reading::isSentence);
  }

  static boolean isSentence(String told) {
    return !told.isBlank()
        && !told.contains("Exception")
        && !told.contains("For input string")
        && !told.contains("java.");
  }
}
