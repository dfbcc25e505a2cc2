#include "telling/level_words.h"

#include "base/plain_number.h"
#include "telling/rounded.h"

#include <fmt/format.h>

namespace keenfall::telling {

namespace {

using verdicts::Judgement;

// "to fail the test “slices newsprint cleanly”", "to fall below rung 4 (slices newsprint)".
std::string test_words(const Judgement& judgement) {
  const verdicts::TestJudged& test = *judgement.test;
  if (test.rung) return fmt::format("to fall below rung {} ({})", *test.rung, test.words);
  if (test.words.empty()) return "to fail the test";
  return fmt::format("to fail the test \"{}\"", test.words);
}

}  // namespace

std::string keen_until(const Judgement& judgement) {
  return judgement.kind.keener_when == trials::KeenerWhen::lower
             ? "until its reading has doubled"
             : "until its reading has fallen to half";
}

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
                         asked_reading_text(at.reading),
                         judgement.unit);
    case verdicts::ComparedAt::level:
      break;
  }
  const std::string words =
      rises ? fmt::format("to reach {} times the start reading", base::plain_number(at.level))
            : fmt::format("to fall to {} of the start reading", to_figures(1 / at.level, 2));
  // Edges read against edges tested: either of the two ends the count.
  return judgement.test ? words + " or " + test_words(judgement) : words;
}

std::string level_reached_words(const Judgement& judgement, const verdicts::At& at) {
  const bool rises = judgement.kind.keener_when == trials::KeenerWhen::lower;
  switch (at.what) {
    case verdicts::ComparedAt::common_reading:
      return fmt::format("{} {} {}",
                         rises ? "reached" : "fallen to",
                         asked_reading_text(at.reading),
                         judgement.unit);
    case verdicts::ComparedAt::level:
      return rises ? fmt::format("reached {} times its start", base::plain_number(at.level))
                   : fmt::format("fallen to {} of its start", to_figures(1 / at.level, 2));
    case verdicts::ComparedAt::half_keenness:
    case verdicts::ComparedAt::test:
      break;
  }
  return rises ? "doubled" : "halved";
}

}  // namespace keenfall::telling
