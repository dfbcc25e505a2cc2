// What the commands ask of the rest of Keenfall. The program passes in the real ones; tests
// stand-ins.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"
#include "workbench/judge_tables.h"

#include <functional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::cli {

using Judgements = base::ResultOrProblems<std::vector<verdicts::Judgement>>;

struct UseCases {
  std::function<Judgements(std::span<const std::string> paths,
                           const workbench::JudgeOptions&,
                           const base::Executor&,
                           const base::ProgressReport&)>
      judge_tables;
  std::function<Judgements(const trials::Trial&,
                           const workbench::JudgeOptions&,
                           const base::Executor&,
                           const base::ProgressReport&)>
      judge_trial;
  std::function<trials::Trial(base::Seed)> matting_bench;
};

}  // namespace keenfall::cli
