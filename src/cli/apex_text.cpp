#include "cli/apex_text.h"

#include "cli/outside_range.h"
#include "cli/ruled_table.h"
#include "cli/section_drawing.h"
#include "cli/text_layout.h"
#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace keenfall::cli {

namespace {

using wear::EdgeReading;

std::string a_paragraph(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

std::string edge_in_words(const wear::EdgeQuestion& question) {
  return fmt::format("{} ({}, {})",
                     question.steel.name,
                     in_words(trials::EdgePreparation{.bevel_angle = question.edge.apex_angle}),
                     question.edge.finish_name);
}

std::string cuts_of(double cuts) {
  const std::string text = telling::cuts_text(cuts);
  return text + (text == "1" ? " cut" : " cuts");
}

std::string life_sentence(const wear::EdgeQuestion& question, const wear::EdgeStory& story) {
  const EdgeReading& start = story.edge.readings.front();
  const EdgeReading& end = story.edge.readings.back();
  const auto& push = story.push.this_edge_cuts;
  std::string sentence =
      push ? fmt::format("An edge of {} is half as keen after {} of {}, by a push reading",
                         edge_in_words(question),
                         cuts_of(*push),
                         question.work.name)
           : fmt::format(
                 "An edge of {} is not yet half as keen after {} of {}: its push reading "
                 "stands at {} times its start",
                 edge_in_words(question),
                 cuts_of(static_cast<double>(question.cuts)),
                 question.work.name,
                 telling::to_figures(end.push_um / start.push_um, 2));
  const auto& slice = story.slice.this_edge_cuts;
  return sentence + (slice ? fmt::format("; by a slice after {}.", telling::cuts_text(*slice))
                           : fmt::format("; by a slice it stands at {} times.",
                                         telling::to_figures(end.slice_um / start.slice_um, 2)));
}

// Which edge it is, and what others do that differ from it by nothing but luck.
std::string luck_sentence(const wear::EdgeQuestion& question, const wear::EdgeStory& story) {
  const wear::LifeSpread& others = story.push.others;
  const std::string which =
      fmt::format("It is the middle one of {} edges that differ by luck alone: of the others",
                  question.other_edges + 1);
  if (!others.lo80_cuts) return which + " fewer than a tenth are half as keen by then.";
  const std::string hi = others.hi80_cuts ? telling::cuts_text(*others.hi80_cuts)
                                          : "over " + std::to_string(question.cuts);
  return fmt::format(
      "{} four in five last {} to {}.", which, telling::cuts_text(*others.lo80_cuts), hi);
}

std::string range_words(const wear::Sensitivity& life) {
  if (!life.joint) {
    return fmt::format("no range, since {} of them had no answer", life.without_answer);
  }
  return fmt::format(
      "{} to {} cuts", telling::cuts_text(life.joint->lo90), telling::cuts_text(life.joint->hi90));
}

// The three constants with which a life goes most, each with the lives at both ends of its range.
std::string hangs_words(const wear::Sensitivity& life) {
  constexpr std::size_t kMost = 3;
  std::vector<std::string> strongest;
  for (const wear::ConstantEffect& effect : life.effects) {
    if (strongest.size() == kMost) break;
    if (!effect.answer_at_lo || !effect.answer_at_hi) continue;
    strongest.push_back(fmt::format("{} ({} to {} cuts)",
                                    effect.constant.name,
                                    telling::cuts_text(*effect.answer_at_lo),
                                    telling::cuts_text(*effect.answer_at_hi)));
  }
  if (strongest.empty()) return "";
  return " The push life hangs most on " + telling::listed(strongest) +
         ": from the low to the high end of each alone.";
}

// How far the answer may lie from the usual one, or how to learn it.
std::string plausible_sentence(const ApexAnswer& answer) {
  if (answer.plausible) {
    return fmt::format(
        "That is with the usual constants. Over all that are plausible, the middle 90 % of {} "
        "draws: by a push reading {}; by a slice {}.{}{}{}",
        answer.plausible->push.draws,
        range_words(answer.plausible->push),
        range_words(answer.plausible->slice),
        outside_words(answer.plausible->push, "The push life", telling::cuts_text),
        outside_words(answer.plausible->slice, "The slice life", telling::cuts_text),
        hangs_words(answer.plausible->push));
  }
  return "That is with the usual constants alone. For its range over all that are plausible: "
         "--draws=200";
}

RuledTable readings_table(const std::vector<EdgeReading>& readings) {
  RuledTable table{.columns = {{.head = "cuts"},
                               {.head = "push µm"},
                               {.head = "× start"},
                               {.head = "slice µm"},
                               {.head = "slice × start", .drop_order = 2},
                               {.head = "force N/mm", .drop_order = 1},
                               {.head = "land µm", .drop_order = 3},
                               {.head = "recession µm", .drop_order = 4},
                               {.head = "chips/mm"},
                               {.head = "deepest chip µm", .drop_order = 5},
                               {.head = "folded %"}}};
  const EdgeReading& start = readings.front();
  for (const EdgeReading& at : readings) {
    table.rows.push_back({std::to_string(at.cuts),
                          fmt::format("{:.2f}", at.push_um),
                          fmt::format("{:.2f}", at.push_um / start.push_um),
                          fmt::format("{:.2f}", at.slice_um),
                          fmt::format("{:.2f}", at.slice_um / start.slice_um),
                          fmt::format("{:.2f}", at.force_newton_per_mm),
                          fmt::format("{:.2f}", at.damage.mean_land_um),
                          fmt::format("{:.2f}", std::max(0.0, at.damage.recession_um)),
                          fmt::format("{:.1f}", at.damage.chips_per_mm),
                          fmt::format("{:.1f}", at.damage.deepest_chip_um),
                          fmt::format("{:.1f}", 100 * at.damage.rolled_fraction)});
  }
  return table;
}

std::string readings_text(const wear::EdgeQuestion& question,
                          const wear::EdgeStory& story,
                          const Look& look) {
  RuledTable table = readings_table(story.edge.readings);
  for (TableColumn& column : table.columns) column.head = shown_as(column.head, look);
  if (!look.unicode) {
    for (TableColumn& column : table.columns) {
      constexpr std::string_view kTimes = "×";
      const std::size_t at = column.head.find(kTimes);
      if (at != std::string::npos) column.head.replace(at, kTimes.size(), "x");
    }
  }
  const LaidOutTable laid = laid_out(table, look);
  std::string text = laid.text;
  if (!laid.left_out.empty()) {
    text += wrapped(
        "Left out here for want of width: " + telling::listed(laid.left_out) + ".", {}, look);
  }
  return text + a_paragraph(fmt::format("Chips count from a depth of {:g} µm. The constants of the "
                                        "force are guesses: look at its ratios only.",
                                        question.visible_chip_um),
                            look);
}

std::string metal_sentence(const wear::MetalLost& lost) {
  struct Share {
    const char* how;
    double um3;
  };
  std::vector<Share> shares = {{"was worn away", lost.worn_um3},
                               {"was dented aside", lost.dented_um3},
                               {"fell off as folds", lost.folded_um3},
                               {"broke out as chips", lost.chipped_um3},
                               {"corroded", lost.corroded_um3}};
  double all = 0;
  for (const Share& share : shares) all += share.um3;
  if (!(all > 0)) return "No metal left the apex.";
  std::ranges::sort(shares, std::ranges::greater(), &Share::um3);
  std::vector<std::string> told;
  for (const Share& share : shares) {
    const double percent = 100 * share.um3 / all;
    if (percent >= 0.5) told.push_back(fmt::format("{:.0f} % {}", percent, share.how));
  }
  return "Of the metal that left the apex " + telling::listed(told) + ".";
}

std::string number_of_events(long count, const std::string& one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

std::string counts_sentence(const wear::DamageCounts& counts) {
  return fmt::format(
      "In all {} by hard particles made {}, {} and {}; sideways load folded or broke {} more.",
      number_of_events(counts.hits, "hit"),
      number_of_events(counts.dents, "dent"),
      number_of_events(counts.folds, "fold"),
      number_of_events(counts.chips, "chip"),
      counts.twists);
}

// The mean of many edges in a few numbers.
std::string curve_sentence(const wire::CurveInNumbers& curve) {
  const double percent_per_cut = 100 * curve.computed.hit_slope_per_cut;
  const std::string wear = curve.computed.wear_scale_cuts
                               ? "wear alone would double the push reading in " +
                                     cuts_of(3 * *curve.computed.wear_scale_cuts)
                               : std::string("nothing wears it");
  return fmt::format(
      "In short: {}, and hits add {} % of the start a cut at first. A curve of these two, "
      "flattened "
      "as hits overlap, lies some {} % (root mean square) from the mean of 40 such edges.",
      wear,
      telling::to_figures(percent_per_cut, 2),
      telling::to_figures(100 * curve.fitted.root_mean_square_misfit, 1));
}

}  // namespace

std::string apex_text(const wear::EdgeQuestion& question,
                      const ApexAnswer& answer,
                      const Look& look) {
  const wear::EdgeStory& story = answer.story;
  return a_paragraph(life_sentence(question, story), look) +
         a_paragraph(luck_sentence(question, story), look) +
         a_paragraph(plausible_sentence(answer), look) +
         a_paragraph(fmt::format("Simulated with {} against measured edges; seed {}.",
                                 wire::kSimulatedCaution,
                                 question.seed.number),
                     look) +
         "\n" + readings_text(question, story, look) + "\n" +
         section_drawing({.start = story.edge.readings.front().section.value(),
                          .end = story.edge.readings.back().section.value(),
                          .cuts = question.cuts},
                         look) +
         "\n" + a_paragraph(metal_sentence(story.edge.lost), look) +
         a_paragraph(counts_sentence(story.edge.counts), look) +
         (answer.curve ? a_paragraph(curve_sentence(*answer.curve), look) : std::string());
}

}  // namespace keenfall::cli
