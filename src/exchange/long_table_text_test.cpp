#include "exchange/long_table_text.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace keenfall::exchange {
namespace {

// Text with everything that a table must quote, and no blanks at its ends.
std::string tricky_text(const std::string& beginning) {
  const auto pieces = *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>(
      "a", "Z", "9", ",", ";", "\"", "\n", " ", "#", "'", "°", "µ", "\\", "=", "-"));
  std::string text = beginning;
  for (const std::string& piece : pieces) text += piece;
  return text + ".";
}

std::string maybe_text(const std::string& beginning) {
  return *rc::gen::arbitrary<bool>() ? tricky_text(beginning) : "";
}

double positive_number() { return *rc::gen::inRange(1, 1'000'000'000) / 7.0e3; }

std::optional<double> maybe_number(double largest) {
  if (*rc::gen::arbitrary<bool>()) return std::nullopt;
  return *rc::gen::inRange(1, 1000) / 1000.0 * largest;
}

std::optional<int> maybe_count() {
  if (*rc::gen::arbitrary<bool>()) return std::nullopt;
  return *rc::gen::inRange(0, 1000);
}

std::size_t series_index(trials::Trial& trial, const trials::ReadingSeries& series) {
  const auto found = std::ranges::find(trial.series, series);
  if (found != trial.series.end()) return static_cast<std::size_t>(found - trial.series.begin());
  trial.series.push_back(series);
  return trial.series.size() - 1;
}

trials::Arm some_arm(const std::string& blade) {
  const auto angle = maybe_number(45);
  trials::Arm arm{.blade = blade,
                  .edge = {.finish = maybe_text("f"), .thickness_behind_edge_mm = maybe_number(2)},
                  .medium = {.name = tricky_text("m"), .condition = maybe_text("c")},
                  .method = {.cut_length_mm = maybe_number(200),
                             .edge_used_mm = maybe_number(200),
                             .board = maybe_text("b")}};
  if (angle) arm.edge.bevel_angle = trials::PerSideAngle{*angle};
  arm.method.motion = *rc::gen::element(trials::Motion::not_recorded,
                                        trials::Motion::push,
                                        trials::Motion::draw,
                                        trials::Motion::slice);
  if (arm.method.motion == trials::Motion::not_recorded) arm.method.as_written = maybe_text("by ");
  return arm;
}

void add_readings(trials::Trial& trial, trials::Run& run) {
  const std::string thread = maybe_text("t");
  const std::string lot = maybe_text("l");
  const bool is_numbered = *rc::gen::arbitrary<bool>();
  double cuts = 0;
  const int count = *rc::gen::inRange(1, 8);
  for (int i = 0; i < count; ++i) {
    cuts += *rc::gen::inRange(0, 50) / 4.0;
    const auto& kind = *trials::find_reading_kind(
        *rc::gen::element<std::string>("thread_push", "cord_draw", "chip_count"));
    trials::Reading reading{
        .series = series_index(
            trial, {.kind = kind, .unit = kind.unit, .thread = thread, .thread_lot = lot}),
        .cuts = cuts,
        .reading = positive_number(),
        .station = maybe_text("s")};
    if (is_numbered) reading.repeat = i;
    if (*rc::gen::inRange(0, 4) == 0) reading.struck_reason = tricky_text("because ");
    if (*rc::gen::inRange(0, 4) == 0) reading.doubtful_reason = tricky_text("perhaps ");
    run.readings.push_back(reading);
  }
}

trials::Trial some_trial() {
  trials::Trial trial{.name = "t"};
  const int run_count = *rc::gen::inRange(1, 6);
  for (int i = 0; i < run_count; ++i) {
    const std::string blade = "B" + std::to_string(std::min(i, *rc::gen::inRange(0, 3)));
    if (trials::find_blade(trial, blade) == nullptr) {
      trials::Blade made{.name = blade, .steel = maybe_text("S")};
      if (const auto hrc = maybe_number(50)) made.hardness = trials::Hardness{.reading = 20 + *hrc};
      trial.blades.push_back(made);
    }
    trials::Run run{.name = tricky_text("#" + std::to_string(i)),
                    .arm = some_arm(blade),
                    .block = maybe_text("k"),
                    .order = maybe_count(),
                    .medium_lot = maybe_text("l"),
                    .operator_name = maybe_text("o"),
                    .date = maybe_text("2024"),
                    .sharpenings_since_new = maybe_count()};
    add_readings(trial, run);
    if (*rc::gen::arbitrary<bool>()) run.notes = {tricky_text("n1"), tricky_text("n2")};
    if (*rc::gen::arbitrary<bool>()) run.deviations = {tricky_text("d")};
    if (*rc::gen::arbitrary<bool>()) run.voided_reason = tricky_text("because ");
    if (*rc::gen::arbitrary<bool>()) {
      run.events = {{trials::EventKind::twisted, 3, "twisted"},
                    {trials::EventKind::other, 5, tricky_text("?")}};
    }
    trial.runs.push_back(run);
  }
  return trial;
}

TEST(WrittenTables, HoldTheColumnsThatHaveContent) {
  const trials::Trial trial = taken(
      "blade,medium,run,cuts,reading,finish,struck\nA,s,1,0,104,9 um,\nA,s,1,1.5,120,,\"slip, "
      "knot\"\n");

  EXPECT_EQ(long_table_of(trial),
            "blade,medium,run,cuts,reading,finish,kind,unit,struck\n"
            "A,s,1,0,104,9 um,thread_push,gf,\n"
            "A,s,1,1.5,120,9 um,thread_push,gf,\"slip, knot\"\n");
}

TEST(WrittenTables, OfAnEmptyTrialAreAHeader) {
  EXPECT_EQ(long_table_of({}), "blade,medium,run,cuts,reading\n");
}

TEST(WrittenTables, QuoteAFirstCellThatWouldBeAComment) {
  const trials::Trial trial = taken(with_rows("\"#1\",s,1,0,104\n"));

  EXPECT_EQ(taken(long_table_of(trial)).blades.at(0).name, "#1");
}

TEST(WrittenTables, KeepSpecimensAndTheirHardness) {
  const trials::Trial trial = taken(
      "blade,medium,run,cuts,reading,specimen,hardness_hrc,steel\n"
      "A,s,1,0,104,I,58,C75S\nA,s,2,0,104,II,60,C75S\n");

  EXPECT_EQ(without_lines(taken(long_table_of(trial))), without_lines(trial));
}

TEST(WrittenTables, KeepRunsWithoutAnyReading) {
  const trials::Trial trial =
      taken("blade,medium,run,cuts,reading,note,voided\nA,s,1,,,,burr left\nA,s,2,,,lost,\n");

  EXPECT_EQ(without_lines(taken(long_table_of(trial))), without_lines(trial));
}

TEST(WrittenTables, ReadBackAsTheSameTrial) {
  EXPECT_TRUE(rc::check("taking what was written gives the trial back", [] {
    const trials::Trial trial = some_trial();

    const auto read_back = take_table_text(long_table_of(trial), "t.csv", {});

    RC_ASSERT(read_back.has_value());
    RC_ASSERT(without_lines(*read_back) == without_lines(trial));
  }));
}

TEST(AnyBytes, AreTakenOrRefusedButNeverBreakTheReading) {
  EXPECT_TRUE(rc::check("bytes after a header", [](const std::string& bytes) {
    (void)take_table_text("blade,medium,run,cuts,reading\n" + bytes, "t.csv", {});
    (void)take_table_text(bytes, "t.csv", {});
  }));
}

TEST(AnyCells, AreTakenOrRefusedButNeverBreakTheReading) {
  EXPECT_TRUE(rc::check("cells from a small alphabet", [] {
    const auto pieces =
        *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>(",",
                                                                                    ",",
                                                                                    ";",
                                                                                    "\n",
                                                                                    "\n",
                                                                                    "\"",
                                                                                    "1",
                                                                                    "A",
                                                                                    "1.5",
                                                                                    "1,5",
                                                                                    "-",
                                                                                    "#",
                                                                                    "gf",
                                                                                    " ",
                                                                                    "nan",
                                                                                    "\r",
                                                                                    "°"));
    std::string text = "blade,medium,run,cuts,reading,kind,unit,repeat,struck,thread,event\n";
    for (const std::string& piece : pieces) text += piece;

    const auto trial = take_table_text(text, "t.csv", {});

    RC_ASSERT(trial.has_value() || !trial.error().empty());
  }));
}

TEST(ALongTablesText, SaysWhatIsCounted) {
  const trials::Counted strokes{.one = "stroke", .many = "strokes"};
  trials::Trial trial{.name = "t", .counted = strokes, .blades = {{.name = "A"}}};
  trial.series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}};
  trials::Run run{.name = "1", .arm = {.blade = "A", .medium = {.name = "felt"}}};
  run.readings = {{.cuts = 0, .reading = 100}};
  run.edge_lives = {{.lasted_cuts = 40, .failed_by_cuts = 50}};
  trial.runs = {run};

  const std::string text = long_table_of(trial);

  EXPECT_THAT(text, ::testing::HasSubstr("cuts (strokes),reading"));
  EXPECT_THAT(text, ::testing::HasSubstr("lasted (strokes),failed_by (strokes)"));
  const auto read = take_table_text(text, "t.csv", {});
  ASSERT_TRUE(read) << read.error().front().sentence;
  EXPECT_EQ(read->counted, strokes);
}

TEST(WideCells, AreTheTallySheetThatTheTrialCouldHaveBeenReadFrom) {
  const TypedRows sheet = {{"blade", "A", "B"},
                           {"medium", "rope", "rope"},
                           {"run", "1", "1"},
                           {"steel", "", "C75S"},
                           {"bevel_angle_per_side_deg", "17", "20"},
                           {"kind", "thread_push", "thread_push"},
                           {"unit", "N", "N"},
                           {"order", "1", "2"},
                           {"note", "tired", ""},
                           {"cuts", "", ""},
                           {"0", "1.04 / 1.01", "0.98"},
                           {"10", "1.5", "1.48 struck: slipped"},
                           {"20", "", "2.1?"}};
  const std::vector<TableInHand> table = {typed_table("rope", sheet)};
  const auto trial = take_tables_in_hand(table, {});
  ASSERT_TRUE(trial) << trial.error().front().sentence;

  EXPECT_EQ(wide_cells_of(*trial), sheet);

  const TypedRows rows = long_cells_of(*trial);
  ASSERT_EQ(rows.size(), 7U);
  EXPECT_EQ(rows[1].size(), rows[0].size());
  EXPECT_EQ(rows[2][4], "1.01");
}

}  // namespace
}  // namespace keenfall::exchange
