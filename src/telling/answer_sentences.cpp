#include "telling/answer_sentences.h"

#include "base/begun_large.h"
#include "base/plain_number.h"
#include "telling/cuts_compared.h"
#include "telling/level_words.h"
#include "telling/listed.h"
#include "telling/rounded.h"
#include "verdicts/what_was_seen.h"

#include <fmt/format.h>
#include <optional>
#include <string>

namespace keenfall::telling {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::Verdict;

std::string interval_words(double low, double high, double margin) {
  return ratio_text(low, margin) + " to " + ratio_text(high, margin);
}

// "C stays keen 3.1 times as long as A"
std::string lasting_words(const Judgement& judgement,
                          const Comparison& comparison,
                          const std::string& a,
                          const std::string& b) {
  const bool at_least =
      cuts_compared(judgement.arms[comparison.a], comparison.at).beyond_what_was_cut;
  const std::string times =
      at_least ? "at least " + ratio_text(comparison.simultaneous.lo95, judgement.worth_it_margin)
               : ratio_text(comparison.ratio.median, judgement.worth_it_margin);
  const std::string level = level_words(judgement, comparison.at);
  if (level.empty()) return fmt::format("{} stays keen {} times as long as {}", a, times, b);
  return fmt::format(
      "{} takes {} times as many {} as {} {}", a, times, judgement.counted.many, b, level);
}

Sentence same_sentence(const Judgement& judgement,
                       const Comparison& comparison,
                       const std::string& a,
                       const std::string& b) {
  const double margin = judgement.worth_it_margin;
  const std::string level = level_words(judgement, comparison.at);
  const std::string rest = fmt::format(
      "{}: ratio {} (90 % interval {}, inside the worth-it margin {}).",
      level.empty() ? "" : " in " + judgement.counted.many + " " + level,
      ratio_text(comparison.ratio.median, margin),
      interval_words(comparison.simultaneous.lo90, comparison.simultaneous.hi90, margin),
      base::plain_number(margin));
  return {.words = {{a + " and " + b + " are "}, {"practically the same", Tone::settled}, {rest}}};
}

Sentence open_sentence(const Judgement& judgement,
                       const Comparison& comparison,
                       const std::string& a,
                       const std::string& b) {
  const double margin = judgement.worth_it_margin;
  const std::string level = level_words(judgement, comparison.at);
  const std::string pair =
      a + " against " + b +
      (level.empty() ? "" : ", in " + judgement.counted.many + " " + level + ",");
  const std::string rest = fmt::format(
      ": ratio {}, could be {} (95 % interval).",
      ratio_text(comparison.ratio.median, margin),
      interval_words(comparison.simultaneous.lo95, comparison.simultaneous.hi95, margin));
  return {.words = {{pair + " is "}, {"not settled", Tone::not_settled}, {rest}}};
}

bool tells_which_lasts_longer(Verdict verdict) {
  return verdict != Verdict::practically_the_same && verdict != Verdict::not_settled;
}

// Where other ways of looking at the same readings do not come to the same.
std::string doubts(const Judgement& judgement,
                   const Comparison& comparison,
                   const std::vector<ArmName>& names) {
  std::string words;
  std::vector<std::string> flat;
  for (const std::size_t index : {comparison.a, comparison.b}) {
    const verdicts::ArmResult& arm = judgement.arms[index];
    if (!verdicts::often_never_blunts(arm)) continue;
    flat.push_back(
        fmt::format("{} of {} runs of {}", arm.runs_that_never_blunt, arm.runs, names[index].name));
  }
  if (!flat.empty() && verdicts::is_settled(comparison.verdict)) {
    words += " But " + listed(flat) + " end no blunter than they began, so take it with care.";
  }
  if (comparison.run_by_run && tells_which_lasts_longer(comparison.verdict) &&
      comparison.run_by_run->ratio < 1) {
    words += fmt::format(
        " But the runs by themselves, without the joint model, lie the other way round: {} times.",
        ratio_text(comparison.run_by_run->ratio, judgement.worth_it_margin));
  }
  if (comparison.quick && !comparison.quick->agrees) {
    words += fmt::format(" A second, quicker calculation reads otherwise: {}.",
                         verdicts::in_words(comparison.quick->verdict));
  }
  if (comparison.near_boundary) {
    words += " This lies so near a boundary that another seed might read otherwise.";
  }
  return words;
}

// What a reader must know beside the verdict.
std::string provisos(const Judgement& judgement, const Comparison& comparison) {
  std::string words;
  if (comparison.beyond_what_was_cut) {
    const bool told_as_at_least =
        tells_which_lasts_longer(comparison.verdict) &&
        cuts_compared(judgement.arms[comparison.a], comparison.at).beyond_what_was_cut;
    words += told_as_at_least
                 ? fmt::format(" The curve, carried on past what was cut, points to {}.",
                               ratio_text(comparison.ratio.median, judgement.worth_it_margin))
                 : " This rests on a curve carried on past what was cut.";
  }
  if (comparison.ratio_these_blades) {
    const double margin = judgement.worth_it_margin;
    const auto in_full = [margin](const numerics::Interval& ratio) {
      return fmt::format("{} (95 % interval {})",
                         ratio_text(ratio.median, margin),
                         interval_words(ratio.lo95, ratio.hi95, margin));
    };
    const std::string here = in_full(*comparison.ratio_these_blades);
    words +=
        " That is about the steels, a further piece of each; of just these pieces the ratio is " +
        (here == in_full(comparison.ratio) ? "the same" : here) + ".";
  }
  if (comparison.single_verdict != comparison.verdict) {
    words += fmt::format(
        " Asked alone it would read: {}; beside {} in this medium its interval is wider, so that "
        "all hold at once.",
        verdicts::in_words(comparison.single_verdict),
        comparison.family_size == 2
            ? std::string("another comparison")
            : fmt::format("{} other comparisons", comparison.family_size - 1));
  }
  return words;
}

}  // namespace

std::string further_runs_sentence(const Comparison& comparison) {
  const auto& further = comparison.further_runs;
  if (!further) return {};
  std::string words = "about " + std::to_string(further->runs_each.value_or(0)) +
                      " more runs each would probably settle it.";
  if (!further->runs_each) words = "settling it would probably take more than 40 more runs each.";
  if (further->runs_each == 1) words = "one more run each would probably settle it.";
  if (!comparison.beyond_what_was_cut) return base::begun_large(std::move(words));
  return "Cutting further would tell most; without it, " + words;
}

Sentence bare_answer(const Judgement& judgement,
                     const Comparison& comparison,
                     const std::vector<ArmName>& names) {
  const std::string& a = names[comparison.a].name;
  const std::string& b = names[comparison.b].name;
  const double margin = judgement.worth_it_margin;
  const auto& bounds = comparison.simultaneous;
  const std::string in_95 = "95 % interval " + interval_words(bounds.lo95, bounds.hi95, margin);
  const std::string too_little =
      fmt::format("{}; 90 % inside the worth-it margin {}", in_95, base::plain_number(margin));
  const std::string open =
      fmt::format("; whether by the worth-it margin of {} is open", base::plain_number(margin));
  const auto lasts = [&](const std::string& interval,
                         const std::string& verdict,
                         const std::string& proviso = {}) -> Sentence {
    return {.words = {{lasting_words(judgement, comparison, a, b) + " (" + interval + "): "},
                      {verdict, Tone::settled},
                      {proviso + "."}}};
  };
  switch (comparison.verdict) {
    case Verdict::longer_and_worth_having:
      return lasts(in_95, "longer, and worth having");
    case Verdict::longer:
      return lasts(in_95, "longer", open);
    case Verdict::longer_but_too_little_to_matter:
      return lasts(too_little, "longer, but too little to matter");
    case Verdict::practically_the_same:
      return same_sentence(judgement, comparison, a, b);
    case Verdict::shorter_but_too_little_to_matter:
      return lasts(too_little, "shorter, but too little to matter");
    case Verdict::shorter:
      return lasts(in_95, "shorter", open);
    case Verdict::shorter_by_enough_to_matter:
      return lasts(in_95, "shorter, by enough to matter");
    case Verdict::not_settled:
      break;
  }
  return open_sentence(judgement, comparison, a, b);
}

Sentence answer_sentence(const Judgement& judgement,
                         const Comparison& comparison,
                         const std::vector<ArmName>& names) {
  Sentence sentence = bare_answer(judgement, comparison, names);
  std::string more;
  if (comparison.verdict == Verdict::not_settled) more = further_runs_sentence(comparison);
  if (tells_which_lasts_longer(comparison.verdict)) more = cuts_sentence(judgement, comparison);
  if (!more.empty()) more.insert(0, " ");
  more += provisos(judgement, comparison) + doubts(judgement, comparison, names);
  if (!more.empty()) sentence.words.push_back({more});
  return sentence;
}

}  // namespace keenfall::telling
