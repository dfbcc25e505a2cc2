#include "cli/resharpen_text.h"

#include "base/plain_number.h"
#include "cli/resharpen_moment_text.h"
#include "cli/ruled_table.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <string_view>

namespace keenfall::cli {

namespace {

using sharpening::HangsOn;
using sharpening::StoneEffort;
using wire::ResharpeningDocument;
using wire::WayBack;

constexpr std::size_t kMostConstants = 4;
constexpr double kSecondsPerMinute = 60;
constexpr double kMinutesFrom = 1.5;  // below, seconds are what one counts

std::string sentence(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

// Two figures, and no part of a pass or of a second.
std::string two_figures_whole(double number) {
  constexpr double kTwoFigures = 99.5;
  if (number < kTwoFigures) return fmt::format("{:.0f}", number);
  return base::with_figures(number, 2);
}

std::string passes_text(double passes) {
  return passes <= 0 ? std::string("0") : two_figures_whole(std::max(1.0, passes));
}

std::string time_text(double minutes) {
  if (minutes >= kMinutesFrom) return base::with_figures(minutes, 2) + " min";
  return two_figures_whole(std::max(1.0, kSecondsPerMinute * minutes)) + " s";
}

std::string range_text(const std::string& lo, const std::string& hi) {
  return lo == hi ? lo : lo + " to " + hi;
}

std::string passes_range(const numerics::Interval& passes) {
  return range_text(passes_text(passes.lo90), passes_text(passes.hi90));
}

// "1 pass", "20 to 60 passes"
std::string passes_words(const std::string& how_many) {
  return how_many + (how_many == "1" ? " pass" : " passes");
}

std::string time_range(const numerics::Interval& minutes) {
  return range_text(time_text(minutes.lo90), time_text(minutes.hi90));
}

std::string steel_text(const ResharpeningDocument& document) {
  return fmt::format(
      "{} ({:g} HRC)", document.question.steel.name, document.question.steel.hardness_hrc);
}

std::string way_words(const WayBack& way) {
  if (!way.micro_bevel_angle) return "Resetting the bevel";
  return fmt::format("Setting a micro-bevel of {:g}° per side", way.micro_bevel_angle->deg);
}

std::string answer_sentence(const ResharpeningDocument& document, const WayBack& way) {
  const StoneEffort& first = way.found.stones.front();
  const std::string passes = passes_range(first.passes);
  return fmt::format("{} on {} takes {} on {}{}: {}.",
                     way_words(way),
                     steel_text(document),
                     passes_words(passes),
                     first.stone.name,
                     passes == "1" ? "" : ", half of them on each side",
                     time_range(first.minutes));
}

// The stone that probably takes fewest passes, where it is not the first.
std::string fastest_sentence(const WayBack& way) {
  const auto fastest = std::ranges::min_element(
      way.found.stones, {}, [](const StoneEffort& effort) { return effort.passes.median; });
  if (fastest == way.found.stones.begin() || fastest->typical.passes <= 0) return "";
  std::string name(fastest->stone.name);
  name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
  return fmt::format(" {} takes {}, {}.",
                     name,
                     passes_words(passes_range(fastest->passes)),
                     time_range(fastest->minutes));
}

std::string with_left_out(const RuledTable& table, const Look& look) {
  const LaidOutTable laid = laid_out(table, look);
  if (laid.left_out.empty()) return laid.text;
  return laid.text + "\n" +
         sentence("Left out here for want of width: " + telling::listed(laid.left_out) + ".", look);
}

std::string stones_table(const WayBack& way, const Look& look) {
  const bool compares = way.found.stones.size() > 1;
  RuledTable table{.columns = {{.head = "stone", .side = Side::left},
                               {.head = "grit", .side = Side::left, .drop_order = 2},
                               {.head = "passes", .side = Side::left},
                               {.head = "typical"},
                               {.head = "time", .side = Side::left},
                               {.head = "glazes in", .drop_order = 1}}};
  if (compares) {
    table.columns.push_back({.head = "times the first", .side = Side::left, .drop_order = 3});
  }
  for (const StoneEffort& effort : way.found.stones) {
    const bool glazes = effort.stone.blunt_share_fraction.typical < 1;
    table.rows.push_back({std::string(effort.stone.name),
                          std::string(effort.stone.grit),
                          passes_range(effort.passes),
                          passes_text(effort.typical.passes),
                          time_range(effort.minutes),
                          glazes ? passes_text(effort.glazing_passes) : "stays fresh"});
    if (!compares) continue;
    const bool is_first = &effort == &way.found.stones.front();
    table.rows.back().push_back(is_first
                                    ? ""
                                    : range_text(base::with_figures(effort.times_first.lo90, 2),
                                                 base::with_figures(effort.times_first.hi90, 2)));
  }
  return with_left_out(table, look);
}

std::string steel_sentence(const ResharpeningDocument& document, const WayBack& way) {
  const auto& steel = way.found.steel;
  return fmt::format(
      "{}: the apex must rise by {} µm, {} mm³ of steel in {:g} mm of edge; {} it is then {} mm "
      "thick.",
      way_words(way),
      base::with_figures(steel.apex_rise_um, 3),
      base::with_figures(way.found.steel_mm3, 2),
      document.question.edge.edge_length_mm,
      way.micro_bevel_angle ? "at its shoulder" : "behind the edge",
      base::with_figures(steel.thickness_after_mm, 3));
}

// How far counted passes shrank the range, and whether they are what a stone may do.
std::string calibration_sentences(const ResharpeningDocument& document, const WayBack& way) {
  if (!way.found.calibration || !document.question.counted) return "";
  const sharpening::Calibration& found = *way.found.calibration;
  const sharpening::CountedStrokes& counted = *document.question.counted;
  const auto figures = [](double lo, double hi, int count) {
    return range_text(base::with_figures(lo, count), base::with_figures(hi, count));
  };
  std::string text = fmt::format(
      "Calibrated by {} counted on {}: {} mm³ of this steel in all, a fresh pass {} mm³, where the "
      "model alone allows {}. Without the count the answer would be {}.",
      passes_words(base::plain_number(counted.passes)),
      way.found.stones.front().stone.name,
      figures(counted.removed_mm3.lo, counted.removed_mm3.hi, 2),
      figures(found.fresh_mm3_per_pass.lo90, found.fresh_mm3_per_pass.hi90, 2),
      figures(found.fresh_of_model_mm3_per_pass.lo90, found.fresh_of_model_mm3_per_pass.hi90, 2),
      passes_words(passes_range(found.passes_of_model)));
  // The rate goes with the steel that was taken, and that is known as well as it was read.
  const double k0_of_mm3 = found.wear_mm3_per_newton_m / counted.removed_mm3.typical;
  const double lo = k0_of_mm3 * counted.removed_mm3.lo;
  const double hi = k0_of_mm3 * counted.removed_mm3.hi;
  if (hi < found.wear_of_model.lo || lo > found.wear_of_model.hi) {
    text += fmt::format(
        " That is a rate of {} mm³/(N m), all of it outside of the {:g} to {:g} of textbooks: look "
        "at the count, the force and the unit of what was measured once more.",
        figures(lo, hi, 2),
        found.wear_of_model.lo,
        found.wear_of_model.hi);
  }
  return text;
}

std::string with_unit(const HangsOn& each) {
  std::string text = telling::limits_text(each.constant.estimate.lo, each.constant.estimate.hi);
  if (!each.constant.unit.empty()) text += " " + each.constant.unit;
  return text;
}

std::string hangs_on_table(const WayBack& way, SourceList& sources, const Look& look) {
  RuledTable table{.columns = {{.head = "it hangs most on", .side = Side::left},
                               {.head = "which may be", .side = Side::left, .drop_order = 2},
                               {.head = "passes", .side = Side::left},
                               {.head = "most where it is", .side = Side::left},
                               {.head = "mark", .side = Side::left, .drop_order = 1}},
                   .wraps_names = true};
  for (std::size_t i = 0; i < std::min(kMostConstants, way.found.hangs_on.size()); ++i) {
    const HangsOn& each = way.found.hangs_on[i];
    const auto [fewest, most] = std::minmax(each.passes_at_lo, each.passes_at_hi);
    if (passes_text(fewest) == passes_text(most)) continue;
    table.rows.push_back({each.constant.name,
                          with_unit(each),
                          range_text(passes_text(fewest), passes_text(most)),
                          each.passes_at_lo > each.passes_at_hi ? "lowest" : "highest",
                          std::string(in_words(each.constant.estimate.from.mark))});
    sources.add(each.constant.estimate.from);
  }
  if (table.rows.empty()) return "";
  return "\n" + with_left_out(table, look);
}

std::string what_it_rests_on(const ResharpeningDocument& document, const Look& look) {
  const auto& work = document.question.work;
  std::string text = sentence(
      fmt::format("With {:g} N, strokes of {:g} mm, {:g} passes a minute{}. The ranges are the "
                  "middle 90 % of {} draws of all constants over where they may lie (seed {}); "
                  "what each hangs on "
                  "is of the first stone, one constant moved at a time.",
                  work.stroke.force_newton,
                  work.stroke.length_mm,
                  work.passes_per_minute,
                  work.dress_every_passes
                      ? fmt::format(", the stone dressed every {:g} passes in {:g} min",
                                    *work.dress_every_passes,
                                    work.minutes_per_dressing)
                      : ", the stone never dressed",
                  document.question.draws,
                  document.question.seed.number),
      look);
  if (const std::string beside = materials::beside_usual_hardness(document.question.steel);
      !beside.empty()) {
    text += sentence(
        fmt::format("At {:g} HRC the steel is {}.", document.question.steel.hardness_hrc, beside),
        look);
  }
  text += sentence(
      "A model, not a measurement: no removal rate of a bench stone was found in open literature, "
      "and its constants are guesses or tuned to what sharpeners report. Passes counted on your "
      "own "
      "stone say more (--counted-passes). The burr, the finer stones and the few strokes that "
      "every "
      "edge needs are not in it.",
      look);
  return text;
}

constexpr const char* kSafety =
    "Safety: fix the stone so that it cannot slip, keep the fingers behind the edge, let a dropped "
    "knife fall. Grind wet or with extraction: dust of steels holds chromium, nickel and cobalt. "
    "At wheels and belts no gloves and no loose cuffs, guards fitted, eyes protected. Makers' "
    "instructions and the rules where you work come first.";

}  // namespace

std::string resharpening_text(const ResharpeningDocument& document, const Look& look) {
  std::string text;
  for (const WayBack& way : document.ways) {
    text += sentence(answer_sentence(document, way) + fastest_sentence(way), look);
    const std::string calibration = calibration_sentences(document, way);
    if (!calibration.empty()) text += sentence(calibration, look);
  }
  SourceList sources;
  for (const WayBack& way : document.ways) {
    text += "\n" + sentence(steel_sentence(document, way), look) + "\n" + stones_table(way, look) +
            hangs_on_table(way, sources, look);
  }
  if (document.growth) {
    text += "\n" + sentence(fmt::format("If the land grows with the root of the cuts and chips "
                                        "evenly, as seen after {:g} cuts, with {:g} min to set up, "
                                        "then on {}, in the middle 90 % of {} draws:",
                                        document.growth->seen_after_cuts,
                                        document.growth->setup_minutes,
                                        document.ways.front().found.stones.front().stone.name,
                                        document.ways.front().best_moment->draws),
                            look);
    for (const WayBack& way : document.ways) {
      if (way.best_moment)
        text += sentence(moment_sentence(*way.best_moment, way_words(way)), look);
    }
  }
  return text + "\n" + what_it_rests_on(document, look) + "\n" + sources.text(look) + "\n" +
         sentence(kSafety, look);
}

}  // namespace keenfall::cli
