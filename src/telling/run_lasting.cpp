#include "telling/run_lasting.h"

#include "telling/rounded.h"

namespace keenfall::telling {

namespace {

using verdicts::RunResult;

// A run past the level from the start has about a millionth of its cuts (verdicts/lasting.h).
bool took_no_cuts(const RunResult& run) {
  constexpr double kNone = 1e-5;
  return run.compared_cuts->median < kNone * run.last_cuts;
}

std::optional<RunLasting> tested_lasting(const RunResult& run) {
  const double passed = run.lasted_cuts.value_or(0);  // 0: not known to have passed
  if (run.failed_by_cuts && passed > 0) {
    return RunLasting{.known = RunKnown::between,
                      .cuts = passed,
                      .to_cuts = *run.failed_by_cuts,
                      .words = cuts_text(passed) + " to " + cuts_text(*run.failed_by_cuts)};
  }
  if (run.failed_by_cuts) {
    return RunLasting{.known = RunKnown::at_most,
                      .cuts = *run.failed_by_cuts,
                      .words = "at most " + cuts_text(*run.failed_by_cuts)};
  }
  if (passed > 0) {
    return RunLasting{
        .known = RunKnown::at_least, .cuts = passed, .words = "at least " + cuts_text(passed)};
  }
  return std::nullopt;
}

}  // namespace

std::optional<RunLasting> run_lasting(const RunResult& run) {
  if (!run.not_used_because.empty()) return std::nullopt;
  if (!run.compared_cuts) return tested_lasting(run);
  if (took_no_cuts(run)) return RunLasting{.known = RunKnown::none, .words = "none"};
  if (run.stopped_before_compared) {
    return RunLasting{.known = RunKnown::at_least,
                      .cuts = run.last_cuts,
                      .words = "at least " + cuts_text(run.last_cuts)};
  }
  return RunLasting{.cuts = run.compared_cuts->median,
                    .words = cuts_text(run.compared_cuts->median)};
}

std::string_view in_json(RunKnown known) {
  switch (known) {
    case RunKnown::exactly:
      return "exactly";
    case RunKnown::at_least:
      return "at_least";
    case RunKnown::at_most:
      return "at_most";
    case RunKnown::between:
      return "between";
    case RunKnown::none:
      break;
  }
  return "none";
}

}  // namespace keenfall::telling
