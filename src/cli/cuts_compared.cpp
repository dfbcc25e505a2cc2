#include "cli/cuts_compared.h"

#include "base/require.h"
#include "cli/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cctype>

namespace keenfall::cli {

namespace {

using verdicts::ArmResult;
using verdicts::Comparison;
using verdicts::Judgement;

// The cuts of an arm are known only where they are reported at the level that was compared.
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

std::string with_metres(double cuts, const std::string& noun, const ArmResult& arm) {
  const std::string metres = metres_text(cuts, arm.arm.method.cut_length_mm);
  return cuts_text(cuts) + noun + (metres.empty() ? "" : " (" + metres + ")");
}

std::string cuts_words(const ArmResult& arm, const verdicts::At& at, const std::string& noun) {
  const verdicts::CutsToLevel& reached = cuts_compared(arm, at);
  return reached.beyond_what_was_cut ? "more than " + with_metres(arm.longest_run_cuts, noun, arm)
                                     : with_metres(reached.cuts.median, noun, arm);
}

}  // namespace

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

std::string cuts_in_words(const ArmResult& arm, const verdicts::At& at) {
  return cuts_words(arm, at, " cuts");
}

std::string cuts_sentence(const Judgement& judgement, const Comparison& comparison) {
  const ArmResult& a = judgement.arms[comparison.a];
  const ArmResult& b = judgement.arms[comparison.b];
  const verdicts::At& at = comparison.at;
  if (!cuts_are_known(judgement, a, at) || !cuts_are_known(judgement, b, at)) return {};
  if (cuts_compared(a, at).beyond_what_was_cut && cuts_compared(b, at).beyond_what_was_cut) {
    const ArmResult& furthest = a.longest_run_cuts < b.longest_run_cuts ? b : a;
    return fmt::format("Neither was cut that far: {} at most.",
                       with_metres(furthest.longest_run_cuts, " cuts", furthest));
  }
  std::string sentence =
      fmt::format("{} against {}.", cuts_words(a, at, " cuts"), cuts_words(b, at, ""));
  sentence.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(sentence.front())));
  return sentence;
}

}  // namespace keenfall::cli
