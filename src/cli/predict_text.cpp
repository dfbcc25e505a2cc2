#include "cli/predict_text.h"

#include "base/plain_number.h"
#include "cli/outside_range.h"
#include "cli/ruled_table.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr std::size_t kConstantsShown = 6;

std::string paragraph(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

std::string two_figures(double number) { return telling::to_figures(number, 2); }

std::string blade_words(const wear::PredictedBlade& blade) {
  return fmt::format("{} ({} HRC, {}° per side)",
                     blade.steel.name,
                     base::plain_number(blade.steel.hardness_hrc),
                     base::plain_number(blade.apex_angle.deg));
}

// Draws that are missing are not missing at random: never left unsaid.
std::string missing_words(const wear::PredictionAsked& asked, const wear::Sensitivity& ratio) {
  if (ratio.without_answer == 0) return {};
  return fmt::format(" {} of {} draws had no answer: an edge outlived {} cuts.",
                     ratio.without_answer,
                     ratio.draws,
                     asked.life.longest_cuts);
}

// Of draws that were counted, all is all.
std::string share_words(double share) {
  if (share == 1) return "all";
  return share == 0 ? "none" : telling::chance_text(share);
}

std::string answer_words(const wear::PredictionAsked& asked, const wear::RatioPrediction& found) {
  const std::string pair =
      fmt::format("In {}, by a {} reading, {} against {}",
                  asked.work.name,
                  asked.life.reading == wear::ApexReading::push ? "push" : "slice",
                  blade_words(asked.a),
                  blade_words(asked.b));
  const std::string missing = missing_words(asked, found.ratio);
  if (!found.ratio.usual_answer || !found.ratio.joint || !found.share_longer) {
    return pair + ": no range can be given, since too many of the plausible cases have no answer." +
           missing;
  }
  return fmt::format(
      "{}: simulated to stay keen {} times as long. With all that is not well known, anything from "
      "{} to {} is plausible (the middle 90 % of {} draws); it lasts longer in {} of them.{}{}",
      pair,
      two_figures(*found.ratio.usual_answer),
      two_figures(found.ratio.joint->lo90),
      two_figures(found.ratio.joint->hi90),
      found.ratio.answers.size(),
      share_words(*found.share_longer),
      outside_words(found.ratio, "The ratio", two_figures),
      missing);
}

std::string lives_words(const wear::RatioPrediction& found) {
  if (!found.life_a_cuts || !found.life_b_cuts) return {};
  return fmt::format(
      "With the usual figures that is about {} against {} cuts. Lives were tuned to what practice "
      "reports, so look at their order of magnitude alone.",
      two_figures(*found.life_a_cuts),
      two_figures(*found.life_b_cuts));
}

// Low to high; which end of the constant gives which stands beside it.
std::string ends(double at_lo, double at_hi) {
  return two_figures(std::min(at_lo, at_hi)) + " to " + two_figures(std::max(at_lo, at_hi));
}

// A rank correlation that so many draws tell from none.
double least_rank(std::size_t draws) {
  constexpr double kHardlyAny = 0.15;
  return std::max(kHardlyAny, 2 / std::sqrt(static_cast<double>(draws)));
}

std::string constants_text(const wear::Sensitivity& ratio, const Look& look) {
  if (!ratio.joint) return {};
  RuledTable table{.columns = {{.head = "constant", .side = Side::left},
                               {.head = "its range"},
                               {.head = "ratio there"},
                               {.head = "highest where it is", .side = Side::left},
                               {.head = "rank", .drop_order = 1}},
                   .wraps_names = true};
  for (const wear::ConstantEffect& effect : ratio.effects) {
    const bool is_enough = table.rows.size() == kConstantsShown;
    if (is_enough || std::abs(effect.rank_correlation) < least_rank(ratio.answers.size())) break;
    const bool moves_it = effect.answer_at_lo && effect.answer_at_hi &&
                          two_figures(*effect.answer_at_lo) != two_figures(*effect.answer_at_hi);
    if (!moves_it) continue;
    const materials::UncertainConstant& constant = effect.constant;
    table.rows.push_back({constant.name + (constant.unit.empty() ? "" : ", " + constant.unit),
                          telling::limits_text(constant.estimate.lo, constant.estimate.hi),
                          ends(*effect.answer_at_lo, *effect.answer_at_hi),
                          *effect.answer_at_lo > *effect.answer_at_hi ? "lowest" : "highest",
                          fmt::format("{:.2f}", effect.rank_correlation)});
  }
  if (table.rows.empty()) return {};
  return paragraph(
             "What the ratio hangs on most: a constant's range, and the ratio at both ends of "
             "it with all others as usual.",
             look) +
         laid_out(table, look).text +
         paragraph(
             "Rank: how the ratio goes with it over all draws, -1 to 1. The rest, and where "
             "each range comes from: --json.",
             look);
}

std::string card_words(const wear::RatioPrediction& found) {
  if (!found.card) {
    return "The published regression of card depth has no opinion: " + found.no_card_because;
  }
  const auto span = [](const materials::Span& depth_mm) {
    return fmt::format("{:.0f} to {:.0f} mm", depth_mm.lo, depth_mm.hi);
  };
  return fmt::format(
      "Beside it, in another unit: a published regression (Thomas 2018, read second hand) gives "
      "{} of silica-loaded card against {}, a ratio of {} to {}. That is depth in a machine test, "
      "not cuts to half keenness.",
      span(found.card->a_mm),
      span(found.card->b_mm),
      two_figures(found.card->ratio.lo),
      two_figures(found.card->ratio.hi));
}

}  // namespace

std::string prediction_text(const wear::PredictionAsked& asked,
                            const wear::RatioPrediction& predicted,
                            const Look& look) {
  std::string text = paragraph(answer_words(asked, predicted), look);
  const std::string lives = lives_words(predicted);
  if (!lives.empty()) text += paragraph(lives, look);
  for (const wear::PredictedBlade* blade : {&asked.a, &asked.b}) {
    const std::string beside = materials::beside_usual_hardness(blade->steel);
    if (beside.empty()) continue;
    text += paragraph(
        fmt::format("At {} HRC it is {}.", base::plain_number(blade->steel.hardness_hrc), beside),
        look);
  }
  text += paragraph(
      "Plausible constants, not validated: no measured edge stands behind this. A "
      "trial tells.",
      look);
  const std::string constants = constants_text(predicted.ratio, look);
  if (!constants.empty()) text += "\n" + constants;
  return text + "\n" + paragraph(card_words(predicted), look);
}

}  // namespace keenfall::cli
