#include "cli/simulated_text.h"

#include "base/plain_number.h"
#include "cli/ruled_table.h"
#include "cli/text_layout.h"
#include "telling/rounded.h"
#include "wire/simulation_json.h"

#include <fmt/format.h>

#include <algorithm>

namespace keenfall::cli {

namespace {

std::string in_a_paragraph(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

std::string counted_words(std::size_t count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

// "AISI A11, 15° per side, fine"
std::string edge_name(const trials::Arm& arm) {
  const std::string edge = in_words(arm.edge);
  return arm.blade + (edge.empty() ? "" : ", " + edge);
}

std::string life_reached_words(double level) {
  return level == 2 ? std::string("half keenness")
                    : fmt::format("{} times the start", base::plain_number(level));
}

// Two figures, as ratios are told; no margin to keep clear of.
std::string times_text(double ratio) { return telling::to_figures(ratio, 2); }

// Pairs of which one thing differs, blade or edge; the others are in the table and in JSON.
bool differs_in_one(const trials::Arm& a, const trials::Arm& b) {
  return a.edge == b.edge || a.blade == b.blade;
}

bool has_several_edges(const wear::SimulatedTrial& made) {
  return std::ranges::any_of(made.arms, [&](const wear::ArmTruth& arm) {
    return arm.arm.edge != made.arms.front().arm.edge;
  });
}

std::string ratio_sentence(const wear::RatioTruth& ratio, const wear::SimulatedTrial& made) {
  const trials::Arm& a = made.arms[ratio.a].arm;
  const trials::Arm& b = made.arms[ratio.b].arm;
  const std::string times = times_text(ratio.ratio);
  const bool name_edges = has_several_edges(made);
  return fmt::format("On {}, {} lasts {} {}.",
                     a.medium.name,
                     name_edges ? edge_name(a) : a.blade,
                     times == "1.0" ? std::string("as long as") : times + " times as long as",
                     name_edges ? edge_name(b) : b.blade);
}

}  // namespace

std::string simulated_trial_text(const wear::TrialPlan& plan,
                                 const wear::SimulatedTrial& made,
                                 const Look& look) {
  const auto readings = [&made] {
    std::size_t count = 0;
    for (const trials::Run& run : made.trial.runs) count += run.readings.size();
    return count;
  }();
  const std::string blocks = counted_words(
      static_cast<std::size_t>(plan.blocks), "block in shuffled order", "blocks in shuffled order");
  return in_a_paragraph(fmt::format("A simulated trial: {} of {}, in {}, with {}; seed {}.",
                                    counted_words(made.trial.runs.size(), "run", "runs"),
                                    counted_words(made.arms.size(), "edge", "edges"),
                                    blocks,
                                    counted_words(readings, "reading", "readings"),
                                    plan.seed.number),
                        look) +
         in_a_paragraph(fmt::format("Simulated with {}: it shows what a trial could look like, and "
                                    "is no evidence about any steel or medium.",
                                    wire::kSimulatedCaution),
                        look);
}

std::string truth_text(const wear::SimulatedTrial& made, const Look& look) {
  const std::string& unit = made.trial.series.front().unit;
  RuledTable table{.columns = {{.head = "blade", .side = Side::left},
                               {.head = "edge", .side = Side::left},
                               {.head = "start, " + unit},
                               {.head = "cuts to " + life_reached_words(made.level)}}};
  std::string medium;
  for (const wear::ArmTruth& arm : made.arms) {
    if (arm.arm.medium.name != medium) table.rows.push_back({shown_as(arm.arm.medium.name, look)});
    medium = arm.arm.medium.name;
    table.rows.push_back({shown_as(arm.arm.blade, look),
                          shown_as(in_words(arm.arm.edge), look),
                          telling::reading_text(arm.start_reading),
                          arm.life_cuts ? telling::cuts_text(*arm.life_cuts) : "not reached"});
  }
  std::string text =
      in_a_paragraph(
          "The truth behind it: medians over edges that differ by the luck of their hits alone, "
          "read without error.",
          look) +
      "\n" + laid_out(table, look).text + "\n";
  for (const wear::RatioTruth& ratio : made.ratios) {
    if (!differs_in_one(made.arms[ratio.a].arm, made.arms[ratio.b].arm)) continue;
    text += wrapped(shown_as(ratio_sentence(ratio, made), look), {.first = 0, .rest = 2}, look);
  }
  return text + in_a_paragraph(
                    "All of it with the usual constants alone. How far a ratio may lie from that, "
                    "over all "
                    "constants that are plausible: keenfall predict",
                    look);
}

}  // namespace keenfall::cli
