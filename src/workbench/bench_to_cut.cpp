#include "workbench/bench_to_cut.h"

#include "notebook/bench_runs.h"
#include "notebook/kept_trials.h"
#include "workbench/bench_lines.h"
#include "workbench/notebook_opening.h"

#include <algorithm>

namespace keenfall::workbench {

base::Result<wire::BenchToCut> bench_to_cut(OpenApp& open, bool is_at_desk) {
  wire::BenchToCut start{.is_at_desk = is_at_desk};
  const wire::AppTold told = open.told();
  if (!told.notebook) return start;
  start.notebook = told.notebook->id;
  start.notebook_name = told.notebook->name;
  const std::string& path = told.notebook->path;
  return naming_the_file(path, [&]() -> base::Result<wire::BenchToCut> {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    for (const notebook::KeptTrial& kept : notebook::kept_trials(*opened)) {
      const auto trial = open.at_hand().trials.trial_of(*opened, kept.uid);
      if (!trial) return base::failed(trial.error());
      if (!(*trial)->asked || !(*trial)->asked->sealed_at_utc) continue;
      const auto lines = bench_lines(*opened, **trial, notebook::bench_runs_of(*opened, kept.uid));
      const auto cut = std::ranges::count(lines, wire::BenchRunState::cut, &wire::BenchLine::state);
      start.trials.push_back({.uid = kept.uid,
                              .name = kept.name,
                              .runs = lines.size(),
                              .left = lines.size() - static_cast<std::size_t>(cut)});
    }
    return start;
  });
}

}  // namespace keenfall::workbench
