#include "page/runs_told.h"

#include "telling/arm_groups.h"

#include <fmt/format.h>
#include <algorithm>

namespace keenfall::page {

namespace {

ToldRun told_run(const telling::Report& report,
                 const verdicts::Judgement& judgement,
                 const verdicts::RunResult& result) {
  const trials::Run& run = report.trial.runs.at(result.run);
  const auto recorded = std::ranges::count_if(run.readings, [&](const trials::Reading& reading) {
    return is_of(report.trial.series.at(reading.series), judgement);
  });
  return {.result = &result,
          .edge = run.arm.blade,
          .medium = run.arm.medium.name,
          .recorded = static_cast<std::size_t>(recorded)};
}

}  // namespace

bool is_of(const trials::ReadingSeries& series, const verdicts::Judgement& judgement) {
  if (series.kind.name != judgement.kind.name) return false;
  return judgement.kind.use == trials::ReadingUse::evidence || series.thread == judgement.thread;
}

std::vector<ToldRun> runs_told(const telling::Report& report, std::size_t judgement_index) {
  const verdicts::Judgement& judgement = report.judgements.at(judgement_index).judgement;
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  std::vector<ToldRun> told;
  for (std::size_t i = 0; i < judgement.runs.size(); ++i) {
    const verdicts::RunResult& run = judgement.runs[i];
    told.push_back(told_run(report, judgement, run));
    told.back().key = fmt::format("{}:{}", judgement_index, i);
    told.back().edge = names.at(run.arm).name;
    told.back().medium = judgement.arms.at(run.arm).arm.medium.name;
  }
  for (const verdicts::RunResult& run : judgement.runs_of_arms_not_judged) {
    told.push_back(told_run(report, judgement, run));
  }
  std::ranges::stable_sort(told, {}, [](const ToldRun& run) { return run.result->run; });
  return told;
}

}  // namespace keenfall::page
