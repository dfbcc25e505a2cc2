#include "workbench/trial_path.h"

#include <algorithm>

namespace keenfall::workbench {

namespace {

using wire::Step;
using wire::StepName;
using wire::StepState;

constexpr const char* kNotWrittenDown = "Not written down; the trial can be judged all the same.";

std::string sealed_when(const TrialStanding& standing) {
  return standing.runs_read_before == 0 ? " was sealed before the first cut."
                                        : " was sealed after runs had been read.";
}

Step step_ask(const TrialStanding& standing) {
  if (standing.is_sealed) {
    return {StepName::ask, StepState::done, "The question" + sealed_when(standing)};
  }
  if (standing.is_claimed) return {StepName::ask, StepState::done, "The question is written down."};
  if (standing.runs > 0) return {StepName::ask, StepState::ready, kNotWrittenDown};
  return {StepName::ask, StepState::next, "Say what you want to find out."};
}

Step step_plan(const TrialStanding& standing) {
  if (standing.is_sealed) {
    return {StepName::plan, StepState::done, "The plan" + sealed_when(standing)};
  }
  if (standing.runs > 0 && !standing.is_planned) {
    return {StepName::plan, StepState::ready, kNotWrittenDown};
  }
  if (standing.is_planned) {
    return {StepName::plan,
            standing.runs > 0 ? StepState::ready : StepState::next,
            "The plan is a draft; seal it before the first cut."};
  }
  if (standing.is_claimed) {
    return {StepName::plan, StepState::next, "Plan which runs would answer it."};
  }
  return {StepName::plan, StepState::waiting, "A plan needs a question first."};
}

Step step_judge(const TrialStanding& standing) {
  if (standing.runs == 0) {
    return {StepName::judge,
            StepState::waiting,
            standing.is_sealed ? "Now sharpen, cut and read as planned; then enter the readings."
                               : "There are no readings yet."};
  }
  if (!standing.is_judged) return {StepName::judge, StepState::next, "Not judged yet."};
  if (standing.judged_as_is) {
    return {StepName::judge, StepState::done, "Judged on " + standing.judged_on + "."};
  }
  return {StepName::judge,
          StepState::next,
          "The readings have changed since it was judged on " + standing.judged_on + "."};
}

Step step_tell(const TrialStanding& standing) {
  if (standing.runs == 0) {
    return {StepName::tell, StepState::waiting, "There is nothing to report yet."};
  }
  return {StepName::tell, StepState::ready, "A report can be written at any time."};
}

}  // namespace

wire::Path path_of(const TrialStanding& standing) {
  wire::Path path{
      .steps = {
          step_ask(standing), step_plan(standing), step_judge(standing), step_tell(standing)}};
  const auto next = std::ranges::find(path.steps, StepState::next, &Step::state);
  const bool waits_for_readings = next == path.steps.end() && standing.runs == 0;
  if (next != path.steps.end()) {
    path.next = *next;
  } else {
    path.next = waits_for_readings ? path.steps[2] : path.steps.back();
  }
  return path;
}

}  // namespace keenfall::workbench
