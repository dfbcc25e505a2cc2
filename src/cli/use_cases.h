// What the commands ask of the rest of Keenfall. The program passes in the real ones; tests
// stand-ins.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"
#include "workbench/app_opening.h"
#include "workbench/judge_files.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_export.h"
#include "workbench/notebook_merging.h"
#include "workbench/notebook_pages.h"
#include "workbench/notebook_place.h"
#include "workbench/report.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::cli {

using Judgements = base::ResultOrProblems<std::vector<verdicts::Judgement>>;

struct NotebookJobs {
  std::function<base::Result<std::string>(
      const std::string& path, const std::string& made_by, const workbench::Hand&)>
      make;
  std::function<base::ResultOrProblems<workbench::TakenIn>(const workbench::TakeRequest&,
                                                           const workbench::Hand&)>
      take;
  std::function<base::ResultOrProblems<workbench::TakenIn>(workbench::MadeTrial,
                                                           const workbench::Hand&)>
      take_made;
  std::function<base::Result<notebook::Struck>(
      const std::string& path, notebook::StrikeRequest, const workbench::Hand&)>
      strike;
  std::function<base::Result<notebook::JournalEntry>(
      const std::string& path, std::optional<std::int64_t> entry, const workbench::Hand&)>
      undo;
  std::function<base::ResultOrProblems<notebook::Merged>(const workbench::MergeRequest&,
                                                         const workbench::Hand&)>
      merge;
  std::function<base::Result<workbench::Exported>(const workbench::ExportRequest&)> export_content;
  std::function<base::Result<std::vector<notebook::KeptTrial>>(const std::string& path)> trials;
  std::function<base::Result<workbench::TrialWithLooks>(const std::string& path,
                                                        const std::string& name)>
      trial;
  std::function<base::Result<std::vector<notebook::JournalEntry>>(const std::string& path)> journal;
  std::function<base::Result<workbench::CheckedNotebook>(const std::string& path)> check;
  std::function<base::Result<workbench::BackedUp>(const std::string& path,
                                                  const std::string& copy_path)>
      back_up;
  std::function<base::Result<workbench::NotebookPlace>(const std::string& path)> place = {};
  std::function<base::Result<std::string>(const workbench::OpenRequest&, const workbench::Hand&)>
      to_open = {};
};

struct UseCases {
  std::function<base::ResultOrProblems<workbench::JudgedFiles>(std::span<const std::string> paths,
                                                               const workbench::JudgeOptions&,
                                                               const workbench::JudgedBy&,
                                                               const base::Executor&,
                                                               const base::ProgressReport&)>
      judge_files;
  std::function<base::ResultOrProblems<workbench::ReportOfFiles>(std::span<const std::string> paths,
                                                                 const workbench::JudgeOptions&,
                                                                 const workbench::JudgedBy&,
                                                                 const base::Executor&,
                                                                 const base::ProgressReport&)>
      report_of_files = {};
  std::function<base::ResultOrProblems<trials::Trial>(std::span<const std::string> paths,
                                                      const workbench::JudgeOptions&)>
      trial_in_files = {};
  std::function<Judgements(const trials::Trial&,
                           const workbench::JudgeOptions&,
                           const base::Executor&,
                           const base::ProgressReport&)>
      judge_trial;
  std::function<trials::Trial(base::Seed)> matting_bench;
  NotebookJobs notebook = {};
};

}  // namespace keenfall::cli
