// Tables made, some of their cells spoiled at random: what is taken of them is what the same tables
// give when the parts that were left out are deleted by hand.
#include "exchange/good_rows.h"
#include "exchange/taken_table.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <functional>
#include <set>
#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using Cells = std::vector<std::vector<std::string>>;  // by row, then by column

struct MadeTable {
  Cells cells;
  char delimiter = ',';
  std::size_t head_rows = 1;  // what stands above the readings
  bool is_wide = false;
};

std::string written_out(const MadeTable& table) {
  std::string text;
  for (const auto& row : table.cells) {
    for (std::size_t c = 0; c < row.size(); ++c) {
      if (c > 0) text += table.delimiter;
      text += row[c];
    }
    text += '\n';
  }
  return text;
}

int below(int end) { return *rc::gen::inRange(0, end); }

struct MadeRun {
  std::string blade;
  std::string name;
  std::string steel;
  std::string finish;
  std::string date;
  std::string voided;
  std::vector<std::string> readings;  // after 0, 10, 20... cuts
};

std::string reading(char delimiter) {
  std::string text = std::to_string(100 + below(50)) + ".5";
  if (delimiter == ';') text[text.size() - 2] = ',';
  return text;
}

std::vector<MadeRun> made_runs(char delimiter) {
  std::vector<MadeRun> runs;
  const int blades = 1 + below(3);
  const int checkpoints = 2 + below(3);
  for (int blade = 0; blade < blades; ++blade) {
    for (int run = 0; run < 2; ++run) {
      MadeRun made{.blade = std::string(1, static_cast<char>('A' + blade)),
                   .name = std::to_string(run + 1),
                   .steel = "steel " + std::to_string(blade),
                   .finish = below(2) == 0 ? "coarse" : "fine",
                   .date = "day " + std::to_string(run),
                   .voided = below(6) == 0 ? "dropped" : "",
                   .readings = {}};
      for (int i = 0; i < checkpoints; ++i) made.readings.push_back(reading(delimiter));
      runs.push_back(made);
    }
  }
  return runs;
}

// `is_sparse`: what holds for a run is said in its first row only.
MadeTable long_table(bool is_sparse) {
  MadeTable table{.delimiter = below(2) == 0 ? ',' : ';'};
  table.cells = {
      {"blade", "medium", "run", "cuts", "reading", "unit", "steel", "finish", "date", "voided"}};
  for (const MadeRun& run : made_runs(table.delimiter)) {
    for (std::size_t i = 0; i < run.readings.size(); ++i) {
      const bool is_said = i == 0 || !is_sparse;
      const auto said = [is_said](const std::string& text) { return is_said ? text : ""; };
      table.cells.push_back({run.blade,
                             "felt",
                             run.name,
                             std::to_string(10 * i),
                             run.readings[i],
                             said("gf"),
                             said(run.steel),
                             said(run.finish),
                             said(run.date),
                             said(run.voided)});
    }
  }
  return table;
}

MadeTable wide_table() {
  MadeTable table{.delimiter = ';', .head_rows = 6, .is_wide = true};
  const std::vector<MadeRun> runs = made_runs(table.delimiter);
  table.cells = {{"blade"}, {"medium"}, {"run"}, {"steel"}, {"finish"}, {"voided"}};
  for (std::size_t i = 0; i < runs.front().readings.size(); ++i) {
    table.cells.push_back({std::to_string(10 * i)});
  }
  for (const MadeRun& run : runs) {
    const std::vector<std::string> head = {
        run.blade, "felt", run.name, run.steel, run.finish, run.voided};
    for (std::size_t r = 0; r < head.size(); ++r) table.cells[r].push_back(head[r]);
    for (std::size_t i = 0; i < run.readings.size(); ++i) {
      table.cells[table.head_rows + i].push_back(run.readings[i]);
    }
  }
  return table;
}

MadeTable runs_table() {
  MadeTable table{.delimiter = below(2) == 0 ? ',' : ';'};
  const std::vector<MadeRun> runs = made_runs(table.delimiter);
  table.cells = {{"blade", "medium", "run", "steel", "finish", "date", "voided"}};
  for (std::size_t i = 0; i < runs.front().readings.size(); ++i) {
    table.cells[0].push_back(std::to_string(10 * i));
  }
  for (const MadeRun& run : runs) {
    std::vector<std::string> row = {
        run.blade, "felt", run.name, run.steel, run.finish, run.date, run.voided};
    row.insert(row.end(), run.readings.begin(), run.readings.end());
    table.cells.push_back(row);
  }
  return table;
}

// Names of columns, and of rows above the readings, are left alone.
void spoil(MadeTable& table, const std::vector<std::string>& with) {
  const int count = 1 + below(4);
  for (int i = 0; i < count; ++i) {
    const std::size_t first_row = table.is_wide && below(3) == 0 ? 0 : table.head_rows;
    const std::size_t r = first_row + static_cast<std::size_t>(
                                          below(static_cast<int>(table.cells.size() - first_row)));
    auto& row = table.cells[r];
    const bool may_be_label = r >= table.head_rows && below(4) == 0;
    const std::size_t first_column = table.is_wide && !may_be_label ? 1 : 0;
    const std::size_t c =
        first_column + static_cast<std::size_t>(below(static_cast<int>(row.size() - first_column)));
    row[c] = with[static_cast<std::size_t>(below(static_cast<int>(with.size())))];
  }
}

// In a wide table a column keeps what is said above it, since that may hold to the right.
MadeTable with_deleted(MadeTable table, const std::vector<TablePart>& parts) {
  std::set<std::size_t, std::greater<>> rows;  // the last first, so that the others stay in place
  for (const TablePart& part : parts) {
    if (part.column == 0) {
      rows.insert(part.line - 1);
    } else if (part.line > 0) {
      table.cells[part.line - 1][part.column - 1].clear();
    } else {
      for (std::size_t r = table.head_rows - 1; r < table.cells.size(); ++r) {
        table.cells[r][part.column - 1].clear();
      }
    }
  }
  for (const std::size_t row : rows) {
    table.cells.erase(table.cells.begin() + static_cast<std::ptrdiff_t>(row));
  }
  return table;
}

const std::vector<std::string>& spoiled_cells() {
  static const std::vector<std::string> cells = {
      "", "x", "-1", "0", "1O", "120 N", "120", "1,5", "1.5", "\"a\" b", "B", "2", "slipped", "5"};
  return cells;
}

void expect_as_if_deleted(const std::string& what, MadeTable (*make)()) {
  int tried = 0;
  int taken_in_part = 0;
  EXPECT_TRUE(rc::check(what, [&tried, &taken_in_part, make] {
    ++tried;
    MadeTable table = make();
    spoil(table, spoiled_cells());
    const std::string text = written_out(table);

    const auto rows = take_good_rows_of_text(text, "t.csv", {});

    const auto whole = take_table_text(text, "t.csv", {});
    RC_ASSERT(rows.has_value() || !whole.has_value());
    if (!rows) return;
    RC_ASSERT(rows->left_out.empty() == whole.has_value());
    if (!rows->left_out.empty()) ++taken_in_part;
    const std::string by_hand = written_out(with_deleted(table, rows->left_out.parts));
    RC_LOG() << text << "\nby hand:\n" << by_hand;
    const auto deleted = take_table_text(by_hand, "t.csv", {});
    RC_ASSERT(deleted.has_value());
    RC_ASSERT(without_lines(rows->trial) == without_lines(*deleted));
  }));
  EXPECT_GT(taken_in_part, tried / 10);  // of few as of many
}

TEST(GoodRows, OfALongTableAreThoseOfTheTableWithTheOthersDeleted) {
  expect_as_if_deleted("every row says all", [] { return long_table(false); });
  expect_as_if_deleted("first rows say it", [] { return long_table(true); });
}

TEST(GoodRows, OfAWideTableAreThoseOfTheTableWithTheOthersDeleted) {
  expect_as_if_deleted("wide", wide_table);
}

TEST(GoodRows, OfALineARunAreThoseOfTheTableWithTheOthersDeleted) {
  expect_as_if_deleted("a line a run", runs_table);
}

TEST(GoodRows, OfAnyCellsAreTakenOrRefusedAndFoundInTheEnd) {
  EXPECT_TRUE(rc::check("cells from a small alphabet", [] {
    const auto pieces = *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>(
        ",", ",", ",", "\n", "\n", "\n", "\"", "1", "A", "B", "1.5", "-", "gf", "N", "x", "yes"));
    std::string text = "blade,medium,run,cuts,reading,unit,steel,date,voided,finish\n";
    for (const std::string& piece : pieces) text += piece;

    const auto rows = take_good_rows_of_text(text, "t.csv", {});

    RC_ASSERT(rows.has_value() || !rows.error().empty());
  }));
}

TEST(GoodRows, OfALongTableAreAllRowsThatWereNotSpoiled) {
  EXPECT_TRUE(rc::check("nothing else is left out", [] {
    MadeTable table = long_table(false);
    // A row that does not say its run would void any that it fits.
    for (std::size_t r = 1; r < table.cells.size(); ++r) table.cells[r].back().clear();
    std::set<std::size_t> spoiled;
    const int count = 1 + below(4);
    for (int i = 0; i < count; ++i) {
      const std::size_t r =
          1 + static_cast<std::size_t>(below(static_cast<int>(table.cells.size() - 1)));
      const std::size_t column = *rc::gen::element<std::size_t>(0, 1, 2, 3, 4);
      table.cells[r][column] =
          column == 4 ? *rc::gen::element<std::string>("", "x", "-1", "0") : "";
      spoiled.insert(r + 1);
    }
    RC_PRE(spoiled.size() + 1 < table.cells.size());

    const auto rows = take_good_rows_of_text(written_out(table), "t.csv", {});

    RC_ASSERT(rows.has_value());
    std::set<std::size_t> lines;
    for (const TablePart& part : rows->left_out.parts) lines.insert(part.line);
    RC_ASSERT(lines == spoiled);
  }));
}

}  // namespace
}  // namespace keenfall::exchange
