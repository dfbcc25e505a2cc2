#include "cli/answer_sentences.h"

#include "base/plain_number.h"
#include "cli/across_media_text.h"
#include "cli/gathered_answers.h"
#include "cli/text_layout.h"
#include "telling/cuts_compared.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <optional>

namespace keenfall::cli {

namespace {

using verdicts::ArmResult;
using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::Verdict;

std::string interval_words(double low, double high, double margin) {
  return telling::ratio_text(low, margin) + " to " + telling::ratio_text(high, margin);
}

// "C stays keen 3.1 times as long as A"
std::string lasting_words(const Judgement& judgement,
                          const Comparison& comparison,
                          const std::string& a,
                          const std::string& b) {
  const bool at_least =
      telling::cuts_compared(judgement.arms[comparison.a], comparison.at).beyond_what_was_cut;
  const std::string times =
      at_least ? "at least " +
                     telling::ratio_text(comparison.simultaneous.lo95, judgement.worth_it_margin)
               : telling::ratio_text(comparison.ratio.median, judgement.worth_it_margin);
  const std::string level = level_words(judgement, comparison.at);
  if (level.empty()) return fmt::format("{} stays keen {} times as long as {}", a, times, b);
  return fmt::format(
      "{} takes {} times as many {} as {} {}", a, times, judgement.counted.many, b, level);
}

std::string longer_sentence(const Judgement& judgement,
                            const Comparison& comparison,
                            const std::string& lasting,
                            const Look& look) {
  const double margin = judgement.worth_it_margin;
  const auto& bounds = comparison.simultaneous;
  const std::string in_95 = "95 % interval " + interval_words(bounds.lo95, bounds.hi95, margin);
  const auto with = [&](const std::string& interval, const std::string& verdict) {
    return fmt::format("{} ({}): {}.", lasting, interval, as_settled(verdict, look));
  };
  const std::string open =
      fmt::format("; whether by the worth-it margin of {} is open", base::plain_number(margin));
  const std::string too_little =
      fmt::format("{}; 90 % inside the worth-it margin {}", in_95, base::plain_number(margin));
  switch (comparison.verdict) {
    case Verdict::longer_and_worth_having:
      return with(in_95, "longer, and worth having");
    case Verdict::longer:
      return fmt::format("{} ({}): {}{}.", lasting, in_95, as_settled("longer", look), open);
    case Verdict::longer_but_too_little_to_matter:
      return with(too_little, "longer, but too little to matter");
    case Verdict::shorter_but_too_little_to_matter:
      return with(too_little, "shorter, but too little to matter");
    case Verdict::shorter:
      return fmt::format("{} ({}): {}{}.", lasting, in_95, as_settled("shorter", look), open);
    case Verdict::shorter_by_enough_to_matter:
      return with(in_95, "shorter, by enough to matter");
    case Verdict::practically_the_same:
    case Verdict::not_settled:
      break;
  }
  return {};
}

std::string same_sentence(const Judgement& judgement,
                          const Comparison& comparison,
                          const std::string& a,
                          const std::string& b,
                          const Look& look) {
  const double margin = judgement.worth_it_margin;
  const std::string level = level_words(judgement, comparison.at);
  return fmt::format(
      "{} and {} are {}{}: ratio {} (90 % interval {}, inside the worth-it margin {}).",
      a,
      b,
      as_settled("practically the same", look),
      level.empty() ? "" : " in " + judgement.counted.many + " " + level,
      telling::ratio_text(comparison.ratio.median, margin),
      interval_words(comparison.simultaneous.lo90, comparison.simultaneous.hi90, margin),
      base::plain_number(margin));
}

std::string further_runs_sentence(const std::optional<verdicts::FurtherRuns>& further) {
  if (!further) return {};
  if (!further->runs_each) return "Settling it would probably take more than 40 more runs each.";
  if (*further->runs_each == 1) return "One more run each would probably settle it.";
  return fmt::format("About {} more runs each would probably settle it.", *further->runs_each);
}

std::string open_sentence(const Judgement& judgement,
                          const Comparison& comparison,
                          const std::string& a,
                          const std::string& b,
                          const Look& look) {
  const double margin = judgement.worth_it_margin;
  const std::string level = level_words(judgement, comparison.at);
  return fmt::format(
      "{} against {}{} is {}: ratio {}, could be {} (95 % interval).",
      a,
      b,
      level.empty() ? "" : ", in " + judgement.counted.many + " " + level + ",",
      as_not_settled("not settled", look),
      telling::ratio_text(comparison.ratio.median, margin),
      interval_words(comparison.simultaneous.lo95, comparison.simultaneous.hi95, margin));
}

bool tells_which_lasts_longer(Verdict verdict) {
  return verdict != Verdict::practically_the_same && verdict != Verdict::not_settled;
}

// What a reader must know beside the verdict.
std::string provisos(const Judgement& judgement, const Comparison& comparison) {
  std::string words;
  if (comparison.beyond_what_was_cut) {
    const bool told_as_at_least =
        tells_which_lasts_longer(comparison.verdict) &&
        telling::cuts_compared(judgement.arms[comparison.a], comparison.at).beyond_what_was_cut;
    words +=
        told_as_at_least
            ? fmt::format(" The curve, carried on past what was cut, points to {}.",
                          telling::ratio_text(comparison.ratio.median, judgement.worth_it_margin))
            : " This rests on a curve carried on past what was cut.";
  }
  if (comparison.ratio_these_blades) {
    const auto& here = *comparison.ratio_these_blades;
    words += fmt::format(
        " That is about the steels, a further piece of each; of just these pieces the ratio is {} "
        "(95 % interval {}).",
        telling::ratio_text(here.median, judgement.worth_it_margin),
        interval_words(here.lo95, here.hi95, judgement.worth_it_margin));
  }
  if (comparison.single_verdict != comparison.verdict) {
    words += fmt::format(" Taken by itself, apart from the other {} of this medium, it reads: {}.",
                         comparison.family_size == 2
                             ? std::string("comparison")
                             : fmt::format("{} comparisons", comparison.family_size - 1),
                         verdicts::in_words(comparison.single_verdict));
  }
  if (comparison.near_boundary) {
    words += " This lies so near a boundary that another seed might read otherwise.";
  }
  return words;
}

// What holds for all comparisons of the group: said once, right below them.
std::string remarks_text(const Judgement& judgement,
                         const telling::ArmGroup& group,
                         const Look& look) {
  std::string text;
  for (const std::string& remark : telling::remarks_on_all(judgement, group)) {
    text += wrapped(shown_as(remark, look), {.first = 2, .rest = 2}, look);
  }
  return text;
}

std::string group_text(const Judgement& judgement,
                       const telling::ArmGroup& group,
                       const std::vector<telling::ArmName>& names,
                       const Look& look) {
  const std::string medium = shown_as(group.medium_words, look);
  if (group.comparisons.size() == 1) {
    const Comparison& comparison = judgement.comparisons[group.comparisons.front()];
    const std::string on = "On " + medium + ", ";
    return wrapped(answer_sentence(judgement, comparison, names, on, look), {.rest = 2}, look) +
           remarks_text(judgement, group, look);
  }
  std::string text = wrapped("On " + medium + ":", {}, look);
  if (group.comparisons.size() > kMostSentences) {
    return text + gathered_by_verdict(judgement, group, names, look) +
           remarks_text(judgement, group, look);
  }
  for (const std::size_t index : group.comparisons) {
    const std::string sentence =
        answer_sentence(judgement, judgement.comparisons[index], names, "", look);
    text += wrapped(sentence, {.first = 2, .rest = 4}, look);
  }
  return text + remarks_text(judgement, group, look);
}

std::string claim_sentence(const Judgement& judgement) {
  const auto claims = [&](verdicts::ClaimAbout about) {
    return std::ranges::count(judgement.comparisons, about, &Comparison::claim_about) > 0;
  };
  if (!claims(verdicts::ClaimAbout::these_blades)) {
    return "This is about the steels: several specimens of each were cut.";
  }
  if (claims(verdicts::ClaimAbout::the_steels)) {
    return "About the steels where several specimens of both were cut, else about these blades "
           "only.";
  }
  const bool one_each =
      std::ranges::all_of(judgement.arms, [](const ArmResult& arm) { return arm.specimens <= 1; });
  return one_each ? "These blades, not their steels: one specimen each."
                  : "These blades, not their steels: that takes several specimens of each.";
}

// No comparisons from a usable fit: say how long each arm lasts, and what would make a comparison.
std::string nothing_compared_text(const Judgement& judgement,
                                  const std::vector<telling::ArmName>& names,
                                  const Look& look) {
  std::string text;
  constexpr std::size_t kMostArms = 10;
  for (std::size_t i = 0; i < std::min(judgement.arms.size(), kMostArms); ++i) {
    const ArmResult& arm = judgement.arms[i];
    const verdicts::At at{.what = judgement.test ? verdicts::ComparedAt::test
                                                 : verdicts::ComparedAt::half_keenness};
    const auto& cuts = telling::cuts_compared(arm, at).cuts;
    const std::string lasts =
        fmt::format("On {}, {} {} {}, 95 % interval {} to {}.",
                    shown_as(arm.arm.medium.name, look),
                    shown_as(names[i].name, look),
                    judgement.test ? "passes its test for" : "keeps half its keenness for",
                    telling::cuts_in_words(judgement, arm, at),
                    telling::cuts_text(cuts.lo95),
                    telling::cuts_text(cuts.hi95));
    text += wrapped(lasts, {.rest = 2}, look);
  }
  return text +
         wrapped(judgement.arms.size() < 2
                     ? "There is nothing to compare it with: a verdict needs a second blade or "
                       "edge, cut in the same medium by the same method."
                     : "Nothing is compared: no two of these were cut in the same medium by "
                       "the same method.",
                 {},
                 look);
}

// "to fail the test “slices newsprint cleanly”", "to fall below rung 4 (slices newsprint)".
std::string test_words(const Judgement& judgement) {
  const verdicts::TestJudged& test = *judgement.test;
  if (test.rung) return fmt::format("to fall below rung {} ({})", *test.rung, test.words);
  if (test.words.empty()) return "to fail the test";
  return fmt::format("to fail the test \"{}\"", test.words);
}

}  // namespace

std::string level_words(const Judgement& judgement, const verdicts::At& at) {
  const bool rises = judgement.kind.keener_when == trials::KeenerWhen::lower;
  switch (at.what) {
    case verdicts::ComparedAt::half_keenness:
      return {};
    case verdicts::ComparedAt::test:
      return test_words(judgement);
    case verdicts::ComparedAt::common_reading:
      return fmt::format("{} {} {}",
                         rises ? "to reach" : "to fall to",
                         telling::asked_reading_text(at.reading),
                         judgement.unit);
    case verdicts::ComparedAt::level:
      break;
  }
  const std::string words =
      rises
          ? fmt::format("to reach {} times the start reading", base::plain_number(at.level))
          : fmt::format("to fall to {} of the start reading", telling::to_figures(1 / at.level, 2));
  // Edges read against edges tested: either of the two ends the count.
  return judgement.test ? words + " or " + test_words(judgement) : words;
}

std::string answer_sentence(const Judgement& judgement,
                            const Comparison& comparison,
                            const std::vector<telling::ArmName>& names,
                            const std::string& on,
                            const Look& look) {
  const std::string a = shown_as(names[comparison.a].name, look);
  const std::string b = shown_as(names[comparison.b].name, look);
  std::string sentence;
  const auto add = [&sentence](const std::string& more) {
    if (!more.empty()) sentence += " " + more;
  };
  switch (comparison.verdict) {
    case Verdict::practically_the_same:
      sentence = same_sentence(judgement, comparison, a, b, look);
      break;
    case Verdict::not_settled:
      sentence = open_sentence(judgement, comparison, a, b, look);
      add(further_runs_sentence(comparison.further_runs));
      break;
    case Verdict::longer_and_worth_having:
    case Verdict::longer:
    case Verdict::longer_but_too_little_to_matter:
    case Verdict::shorter_but_too_little_to_matter:
    case Verdict::shorter:
    case Verdict::shorter_by_enough_to_matter:
      sentence =
          longer_sentence(judgement, comparison, lasting_words(judgement, comparison, a, b), look);
      add(telling::cuts_sentence(judgement, comparison));
      break;
  }
  return on + sentence + provisos(judgement, comparison);
}

std::string answers_text(const Judgement& judgement, const Look& look) {
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  if (!judgement.fit.usable) {
    std::string text =
        wrapped(as_not_settled("No verdict", look) + ": the fit is not usable.", {}, look);
    for (const std::string& reason : judgement.fit.reasons) {
      text += wrapped(shown_as(reason, look), {.first = 2, .rest = 4}, look);
    }
    return text;
  }
  if (judgement.comparisons.empty()) return nothing_compared_text(judgement, names, look);
  std::string text;
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    if (!group.comparisons.empty()) text += group_text(judgement, group, names, look);
  }
  return text + across_media_sentences(judgement, look) +
         wrapped(claim_sentence(judgement), {}, look);
}

}  // namespace keenfall::cli
