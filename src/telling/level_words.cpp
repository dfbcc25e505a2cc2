#include "telling/level_words.h"

#include "base/plain_number.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <cmath>

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

// 1 / level as a fraction of small numbers, "2/3"; in figures where there is none.
std::string share_words(double level) {
  constexpr int kMostOfAShare = 10;
  constexpr double kNear = 1e-3;
  for (int whole = 1; whole <= kMostOfAShare; ++whole) {
    const double part = whole / level;
    const double nearest = std::round(part);
    if (nearest >= 1 && std::abs(part - nearest) < kNear) {
      return whole == 1 ? "1" : fmt::format("{:.0f}/{}", nearest, whole);
    }
  }
  return to_figures(1 / level, 2);
}

bool rises_as_it_blunts(const Judgement& judgement) {
  return judgement.kind.keener_when == trials::KeenerWhen::lower;
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
                         verdicts::asked_reading_text(at.reading),
                         judgement.unit);
    case verdicts::ComparedAt::level:
      break;
  }
  const std::string words =
      rises ? fmt::format("to reach {} times the start reading", base::plain_number(at.level))
            : fmt::format("to fall to {} of the start reading", level_label(judgement, at.level));
  // Edges read against edges tested: either of the two ends the count.
  return judgement.test ? words + " or " + test_words(judgement) : words;
}

std::string level_reached_words(const Judgement& judgement, const verdicts::At& at) {
  const bool rises = judgement.kind.keener_when == trials::KeenerWhen::lower;
  switch (at.what) {
    case verdicts::ComparedAt::common_reading:
      return fmt::format("{} {} {}",
                         rises ? "reached" : "fallen to",
                         verdicts::asked_reading_text(at.reading),
                         judgement.unit);
    case verdicts::ComparedAt::level:
      return rises ? fmt::format("reached {} times its start", base::plain_number(at.level))
                   : fmt::format("fallen to {} of its start", level_label(judgement, at.level));
    case verdicts::ComparedAt::half_keenness:
    case verdicts::ComparedAt::test:
      break;
  }
  return rises ? "doubled" : "halved";
}

std::string level_label(const Judgement& judgement, double level) {
  return rises_as_it_blunts(judgement) ? base::plain_number(level) : share_words(level);
}

std::string levels_words(const Judgement& judgement) {
  return rises_as_it_blunts(judgement) ? "reading, times its start"
                                       : "reading, as a share of its start";
}

std::string when_at_level(const Judgement& judgement, double level) {
  const std::string label = level_label(judgement, level);
  return rises_as_it_blunts(judgement)
             ? "when the reading has reached " + label + " times its start"
             : "when the reading has fallen to " + label + " of its start";
}

std::optional<LevelsCompared> levels_compared(const Judgement& judgement,
                                              const verdicts::Comparison& pair) {
  switch (pair.at.what) {
    case verdicts::ComparedAt::half_keenness:
    case verdicts::ComparedAt::level:
      return LevelsCompared{.a = pair.at.level, .b = pair.at.level};
    case verdicts::ComparedAt::test:
      if (!judgement.test || !judgement.test->level) return std::nullopt;
      return LevelsCompared{.a = *judgement.test->level, .b = *judgement.test->level};
    case verdicts::ComparedAt::common_reading:
      break;
  }
  const auto& start_a = judgement.arms[pair.a].start_reading;
  const auto& start_b = judgement.arms[pair.b].start_reading;
  if (!start_a || !start_b) return std::nullopt;
  const auto level = [&](double start) {
    return rises_as_it_blunts(judgement) ? pair.at.reading / start : start / pair.at.reading;
  };
  return LevelsCompared{.a = level(start_a->median), .b = level(start_b->median)};
}

}  // namespace keenfall::telling
