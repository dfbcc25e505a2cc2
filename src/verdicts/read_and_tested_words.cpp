#include "verdicts/read_and_tested_words.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "verdicts/judge_lives.h"

#include <algorithm>
#include <cstddef>

namespace keenfall::verdicts {

namespace {

using base::plain_number;

std::string arm_on_medium(const ArmResult& arm) {
  return arm.arm.blade + " on " + arm.arm.medium.name;
}

std::string on_reaching(const ArmResult& arm, const Judgement& judgement) {
  const std::string times = plain_number(judgement.stop_level);
  const std::string last_read = so_many(plain_number(arm.longest_run_cuts), judgement.counted);
  if (arm.stop_level->runs_that_reached > 0) {
    return "The curve of " + arm_on_medium(arm) + " comes to " + times +
           " times its start only beyond the " + last_read +
           " at which it was last read; its ratios rest on the curve carried on.";
  }
  return "No run of " + arm_on_medium(arm) + " was read at " + times +
         " times its start, and its curve comes there only beyond the " + last_read +
         " at which it was last read; its ratios rest on the curve carried on.";
}

void add_what_was_not_reached(std::vector<std::string>& sentences, const Judgement& judgement) {
  for (const ArmResult& arm : judgement.arms) {
    if (const auto sentence = known_from_below(arm)) sentences.push_back(*sentence);
    if (!arm.test && arm.stop_level->beyond_what_was_cut) {
      sentences.push_back(on_reaching(arm, judgement));
    }
  }
}

// The same arm by both ways of trying is not compared with itself.
void add_arms_left_out(std::vector<std::string>& sentences,
                       const ReadEdges& read,
                       const TestedEdges& tested) {
  for (const trials::Arm& arm : tested.data.groups.arms) {
    if (std::ranges::count(read.data.arms, arm) == 0) continue;
    sentences.push_back(arm.blade + " on " + arm.medium.name +
                        " was both read and tested: here it counts as read, and how long it passed "
                        "the test is not used.");
  }
}

}  // namespace

std::vector<std::string> not_told_by_reading_and_testing(const Judgement& judgement,
                                                         const ReadEdges& read,
                                                         const TestedEdges& tested) {
  const std::string times = plain_number(judgement.stop_level);
  std::vector<std::string> sentences{
      "That failing the test means " + times +
          " times the start reading is a statement, taken as it was given; nothing here checks it, "
          "and every ratio rests on it.",
      "How sharp the tested edges were at their start was not read; the level is taken to count "
      "from each edge's own start.",
      "The readings and the test were fitted apart, each with a scatter from run to run of its "
      "own; "
      "what a day or a lot did to both is not allowed for, and a difference between the two ways "
      "of trying cannot be told from a difference of blades."};
  if (judgement.fit.usable) {
    sentences.push_back(
        "The second calculation is another one of the curves only; the tested side is the same.");
  }
  add_what_was_not_reached(sentences, judgement);
  add_arms_left_out(sentences, read, tested);
  return sentences;
}

std::string what_the_level_does(const Comparison& pair) {
  base::require(pair.ratio_by_level.size() == 3, "a lower level, the stated one and a higher one");
  const auto at = [&pair](std::size_t i) {
    const RatioAtLevel& ratio = pair.ratio_by_level[i];
    return plain_number(ratio.level) + " times the start, the ratio would be " +
           base::with_figures(ratio.ratio.median, 2);
  };
  return "Were failing the test " + at(0) + "; were it " + at(2) + ".";
}

}  // namespace keenfall::verdicts
