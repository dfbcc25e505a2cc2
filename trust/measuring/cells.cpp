#include "trust/measuring/cell.h"

#include "base/plain_number.h"

#include <cmath>
#include <vector>

namespace keenfall::trust {

namespace {

using blunting::Truth;

// Edges that start 40 % apart are compared at a common reading: about twice the blunter start of
// 146 gf, said with two figures. There they last equally long.
constexpr double kCommonReadingGf = 290;

Truth main_truth(int runs_each = 4) { return {.runs_each = runs_each, .stop_level = {}}; }

Truth unequal_starts() {
  Truth truth = main_truth();
  truth.start_ratio = 1.4;
  const double at = std::log(kCommonReadingGf);
  truth.ratio = std::exp(log_cuts_to_reading(true_curve(truth, "B"), at) -
                         log_cuts_to_reading(true_curve(truth, "A"), at));
  return truth;
}

// The main trial with one field changed.
template <class Field, class Value>
Truth with(Field Truth::*field, const Value& value) {
  Truth truth = main_truth();
  truth.*field = value;
  return truth;
}

Truth unequal_media() {
  Truth truth = with(&Truth::run_scatter, 0.15);
  truth.run_scatter_manila = 0.4;
  return truth;
}

Truth unequal_arms() {
  Truth truth = with(&Truth::run_scatter, 0.15);
  truth.run_scatter_b = 0.4;
  return truth;
}

Truth four_blocks() {
  Truth truth = with(&Truth::blocks, 4);
  truth.block_scatter = 0.15;
  return truth;
}

std::vector<Cell> main_cells() {
  return {{.name = "runs-3", .about = "3 runs of each", .main = true, .made = main_truth(3)},
          {.name = "runs-4", .about = "4 runs of each", .main = true, .made = main_truth(4)},
          {.name = "runs-6", .about = "6 runs of each", .main = true, .made = main_truth(6)},
          {.name = "runs-10", .about = "10 runs of each", .main = true, .made = main_truth(10)}};
}

std::vector<Cell> cells_of_scatter() {
  return {{.name = "scatter-0.15",
           .about = "runs scatter by 0.15",
           .made = with(&Truth::run_scatter, 0.15)},
          {.name = "scatter-0.40",
           .about = "runs scatter by 0.40",
           .made = with(&Truth::run_scatter, 0.4)},
          {.name = "run-tails",
           .about = "runs with heavy tails (Student's t, 3 degrees of freedom)",
           .misspecified = true,
           .made = with(&Truth::run_tail_degrees_of_freedom, 3)},
          {.name = "media-0.15",
           .about = "two media, compared where runs scatter by 0.15; by 0.40 in the other",
           .made = unequal_media()},
          {.name = "media-0.40",
           .about = "such trials, compared where runs scatter by 0.40",
           .medium = "manila",
           .made = unequal_media()},
          {.name = "arms",
           .about = "runs of one blade scatter by 0.15, of the other by 0.40",
           .misspecified = true,
           .made = unequal_arms()},
          {.name = "blocks", .about = "four blocks, which scatter by 0.15", .made = four_blocks()},
          {.name = "shapes",
           .about = "the shape of the curve scatters by 0.15 from run to run",
           .misspecified = true,
           .made = with(&Truth::shape_scatter, 0.15)}};
}

std::vector<Cell> cells_of_reading() {
  using blunting::ReadingNoise;
  const ReadingNoise tails{.reading_scatter = 0.1, .tail_degrees_of_freedom = 3};
  const ReadingNoise spots{.reading_scatter = 0.1, .checkpoint_scatter = 0.06};
  return {{.name = "tails",
           .about = "readings with heavy tails (Student's t, 3 degrees of freedom)",
           .made = with(&Truth::noise, tails)},
          {.name = "outlier",
           .about = "one reading of each trial is three times too large or too small",
           .made = with(&Truth::outlier_ratio, 3)},
          {.name = "slip",
           .about = "one reading of each trial is ten times too large or too small",
           .made = with(&Truth::outlier_ratio, 10)},
          {.name = "stopped-4",
           .about = "a run stops once its mean reading is 4 times its first",
           .made = with(&Truth::stop_level, 4)},
          {.name = "stopped-2",
           .about = "a run stops once its mean reading is twice its first",
           .made = with(&Truth::stop_level, 2)},
          {.name = "spots",
           .about = "checkpoints scatter by 0.06 besides their readings",
           .made = with(&Truth::noise, spots)},
          {.name = "starts",
           .about = "one blade starts 40 % blunter: compared at a common reading",
           .made = unequal_starts()}};
}

Cell apex_cell() {
  constexpr std::string_view kGritty = "uplifted sisal matting";
  return {.name = "apex",
          .about = "edges cut by the apex simulator",
          .misspecified = true,
          .medium = kGritty,
          .made = ApexPair{.medium = kGritty, .steel = "AISI D2", .other = "75Ni8"}};
}

std::vector<Cell> all_cells() {
  std::vector<Cell> all = main_cells();
  for (const Cell& cell : cells_of_scatter()) all.push_back(cell);
  for (const Cell& cell : cells_of_reading()) all.push_back(cell);
  all.push_back(apex_cell());
  return all;
}

// Name and number of every field.
std::string in_text(const Truth& t) {
  std::string text;
  const auto put = [&text](const char* name, double number) {
    text += std::string(" ") + name + " " + base::plain_number(number);
  };
  put("ratio", t.ratio);
  put("runs_each", t.runs_each);
  put("run_scatter", t.run_scatter);
  put("start_scatter", t.start_scatter);
  put("start_effect", t.start_effect);
  put("order_drift", t.order_drift);
  put("slip_every", t.slip_every);
  put("specimens_each", t.specimens_each);
  put("specimen_scatter", t.specimen_scatter);
  put("blocks", t.blocks);
  put("block_scatter", t.block_scatter);
  put("reading_scatter", t.noise.reading_scatter);
  put("checkpoint_scatter", t.noise.checkpoint_scatter);
  put("reading_tail", t.noise.tail_degrees_of_freedom.value_or(0));
  put("stop_level", t.stop_level.value_or(0));
  put("outlier_ratio", t.outlier_ratio);
  put("start_ratio", t.start_ratio);
  put("shape_scatter", t.shape_scatter);
  put("run_tail", t.run_tail_degrees_of_freedom.value_or(0));
  put("run_scatter_b", t.run_scatter_b.value_or(0));
  put("run_scatter_manila", t.run_scatter_manila.value_or(0));
  return text;
}

std::string in_text(const ApexPair& pair) {
  return " " + std::string(pair.medium) + ", " + std::string(pair.steel) + ", " +
         std::string(pair.other) + ", runs_each " + base::plain_number(pair.runs_each) +
         ", truth_edges " + base::plain_number(pair.truth_edges);
}

}  // namespace

std::span<const Cell> cells() {
  static const std::vector<Cell> all = all_cells();
  return all;
}

std::string definition_of(const Cell& cell) {
  return std::string(cell.name) + ":" +
         std::visit([](const auto& made) { return in_text(made); }, cell.made) + " in " +
         std::string(cell.medium) + " margin " + base::plain_number(kMargin);
}

}  // namespace keenfall::trust
