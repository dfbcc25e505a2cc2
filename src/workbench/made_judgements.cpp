#include "workbench/made_judgements.h"

#include "base/plain_number.h"
#include "verdicts/read_and_tested.h"

#include <algorithm>
#include <set>
#include <string>

namespace keenfall::workbench {

namespace {

constexpr const char* kLevelNotUsed =
    "A level was given for the test, but no other edges were judged by readings in the medium of "
    "those tested, so it was not used.";

// The levels that the lives of the test state; 0 for one that states none.
std::set<double> levels_stated(const trials::Trial& trial, const blunting::TestKey& test) {
  std::set<double> levels;
  if (test.rung) return {0};
  for (const trials::Run& run : trial.runs) {
    for (const trials::EdgeLife& life : run.edge_lives) {
      if (life.test == test.words && !life.struck_reason) levels.insert(life.level.value_or(0));
    }
  }
  return levels;
}

std::string level_wanted(const trials::Trial& trial, const blunting::TestKey& test) {
  const std::string may_be_compared =
      "Other edges were read in the same medium, and can be compared with those tested ";
  std::set<double> levels = levels_stated(trial, test);
  const bool some_state_none = levels.erase(0) > 0;
  if (levels.empty()) {
    return may_be_compared +
           "once it is said what failing the test means on a curve: in a column test_level, or by "
           "--test-level=3 if it means 3 times the start reading.";
  }
  std::string listed;
  for (const double level : levels) {
    listed += (listed.empty() ? "" : " and ") + base::plain_number(level);
  }
  if (levels.size() == 1 && some_state_none) {
    return may_be_compared + "once all of them say what failing the test means: some say " +
           listed + " times the start reading, others nothing (--test-level=" + listed +
           " says the same for those).";
  }
  return may_be_compared + "only where failing the test means one thing: the table says " + listed +
         " times the start reading. Judge them apart, with --where.";
}

void say(verdicts::Judgement& judgement, const std::string& sentence) {
  judgement.cannot_say.push_back(sentence);
}

std::string of_which_readings(const JudgedCurves& curves) {
  const std::string thread = curves.fitted->recorded.data.thread.empty()
                                 ? ""
                                 : " (" + curves.fitted->recorded.data.thread + ")";
  return "Edges were read in more than one way; the level is taken as one of the " +
         curves.fitted->recorded.data.kind.words + thread + ", of which there are most.";
}

}  // namespace

trials::Trial with_test_level(trials::Trial trial, double level) {
  for (trials::Run& run : trial.runs) {
    for (trials::EdgeLife& life : run.edge_lives) {
      if (!life.level) life.level = level;
    }
  }
  return trial;
}

std::vector<verdicts::Judgement> read_against_tested(const BothWays& ways,
                                                     std::span<JudgedLives> tests,
                                                     const verdicts::LivesQuestion& question,
                                                     base::Seed seed) {
  std::vector<verdicts::Judgement> judgements;
  for (JudgedLives& test : tests) {
    const auto curves = std::ranges::find_if(ways.curves, [&test](const JudgedCurves& judged) {
      return !verdicts::arms_read_and_tested(judged.fitted->recorded.data, test.fitted->data)
                  .empty();
    });
    if (curves == ways.curves.end()) {
      if (ways.test_level) say(test.judgement, kLevelNotUsed);
      continue;
    }
    if (!test.fitted->data.level) {
      say(test.judgement, level_wanted(ways.trial, test.fitted->test));
      continue;
    }
    judgements.push_back(verdicts::judge_read_and_tested(
        ways.trial,
        {.data = curves->fitted->recorded.data,
         .fit = curves->fitted->recorded.fit,
         .model = ways.model,
         .judgement = curves->judgement},
        {.data = test.fitted->data, .fit = test.fitted->fit, .judgement = test.judgement},
        question,
        seed));
    if (ways.curves.size() > 1) say(judgements.back(), of_which_readings(*curves));
  }
  return judgements;
}

}  // namespace keenfall::workbench
