#include "telling/cuts_compared.h"

#include "base/begun_large.h"
#include "base/require.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>

namespace keenfall::telling {

namespace {

using verdicts::ArmResult;
using verdicts::Comparison;
using verdicts::Judgement;

enum class Naming { number_and_word, number_only };

std::string with_stock(const Judgement& judgement,
                       double cuts,
                       Naming naming,
                       const ArmResult& arm) {
  std::string words = cuts_text(cuts);
  if (naming == Naming::number_and_word) words = so_many(words, judgement.counted);
  if (judgement.counted.is_measured) return words;
  const std::string stock = stock_text(cuts, arm.arm.method.cut_length_mm, judgement.told_in);
  return stock.empty() ? words : words + " (" + stock + ")";
}

std::string cuts_words(const Judgement& judgement,
                       const ArmResult& arm,
                       const verdicts::CutsToLevel& reached,
                       Naming naming) {
  if (const auto least = reached.at_least()) {
    return "at least " + with_stock(judgement, *least, naming, arm);
  }
  if (!reached.beyond_what_was_cut) {
    return with_stock(judgement, reached.cuts.median, naming, arm);
  }
  // An edge that was seen to get there leaves it open.
  return "probably more than " + with_stock(judgement, arm.longest_run_cuts, naming, arm);
}

}  // namespace

bool cuts_are_known(const Judgement& judgement, const ArmResult& arm, const verdicts::At& at) {
  switch (at.what) {
    case verdicts::ComparedAt::half_keenness:
      return arm.half_keenness.has_value();
    case verdicts::ComparedAt::common_reading:
      return arm.common_reading.has_value();
    case verdicts::ComparedAt::test:
      return arm.test.has_value();
    case verdicts::ComparedAt::level:
      break;
  }
  return at.level == judgement.stop_level && (arm.stop_level || arm.test);
}

const verdicts::CutsToLevel& cuts_compared(const ArmResult& arm, const verdicts::At& at) {
  const std::optional<verdicts::CutsToLevel>* wanted = &arm.stop_level;
  switch (at.what) {
    case verdicts::ComparedAt::half_keenness:
      wanted = &arm.half_keenness;
      break;
    case verdicts::ComparedAt::common_reading:
      wanted = arm.common_reading ? &arm.common_reading : &arm.half_keenness;
      break;
    case verdicts::ComparedAt::test:
    case verdicts::ComparedAt::level:
      break;
  }
  // A tested arm has one number of cuts, which stands for its level too.
  if (!*wanted) wanted = &arm.test;
  base::require(wanted->has_value(), "an arm was read or tested");
  return **wanted;
}

std::string cuts_in_words(const Judgement& judgement,
                          const ArmResult& arm,
                          const verdicts::At& at) {
  return cuts_in_words(judgement, arm, cuts_compared(arm, at));
}

std::string cuts_in_words(const Judgement& judgement,
                          const ArmResult& arm,
                          const verdicts::CutsToLevel& reached) {
  return cuts_words(judgement, arm, reached, Naming::number_and_word);
}

std::string cuts_sentence(const Judgement& judgement, const Comparison& comparison) {
  const ArmResult& a = judgement.arms[comparison.a];
  const ArmResult& b = judgement.arms[comparison.b];
  const verdicts::At& at = comparison.at;
  if (!cuts_are_known(judgement, a, at) || !cuts_are_known(judgement, b, at)) return {};
  if (cuts_compared(a, at).beyond_what_was_cut && cuts_compared(b, at).beyond_what_was_cut) {
    const ArmResult& furthest = a.longest_run_cuts < b.longest_run_cuts ? b : a;
    return fmt::format(
        "Neither was cut that far: {} at most.",
        with_stock(judgement, furthest.longest_run_cuts, Naming::number_and_word, furthest));
  }
  return base::begun_large(
      fmt::format("{} against {}.",
                  cuts_words(judgement, a, cuts_compared(a, at), Naming::number_and_word),
                  cuts_words(judgement, b, cuts_compared(b, at), Naming::number_only)));
}

}  // namespace keenfall::telling
