#include "workbench/bench_lines.h"

#include "bench/standing.h"
#include "planning/runs_to_cut.h"
#include "trials/edge.h"
#include "workbench/bench_put_in.h"

#include <algorithm>
#include <utility>

namespace keenfall::workbench {

namespace {

class Lines {
 public:
  Lines(const notebook::Notebook& opened,
        const TrialAtHand& trial,
        std::span<const notebook::BenchRun> runs)
      : opened_(opened),
        at_hand_(trial),
        trial_(*trial.trial),
        plan_(trial.asked->plan),
        runs_(runs) {}

  std::vector<wire::BenchLine> all() {
    std::vector<wire::BenchLine> lines;
    for (const trials::PlannedRun& planned : plan_.runs) {
      wire::BenchLine line = line_of({.name = std::to_string(planned.block),
                                      .arm = planned.arm,
                                      .specimen = planned.specimen,
                                      .block = planned.block,
                                      .order = planned.order});
      const bool is_in = planning::is_in_trial(planned, plan_, trial_);
      for (const notebook::BenchRun& run : runs_) {
        if (run.to_cut.order == planned.order) stand_as(line, run, is_in);
      }
      if (line.run.empty() && is_in) line.state = wire::BenchRunState::cut;
      lines.push_back(std::move(line));
    }
    for (const notebook::BenchRun& run : runs_) {
      if (run.to_cut.order || run.to_cut.arm >= plan_.arms.size()) continue;
      wire::BenchLine line = line_of(run.to_cut);
      stand_as(line, run, has_run_called(at_hand_, run.to_cut));
      lines.push_back(std::move(line));
    }
    return lines;
  }

 private:
  wire::BenchLine line_of(const bench::RunToCut& to_cut) const {
    const trials::PlannedArm& arm = plan_.arms.at(to_cut.arm);
    const trials::Medium& medium = plan_.cuttings.at(arm.cutting).medium;
    return {.to_cut = to_cut,
            .blade = arm.blade,
            .edge_words = trials::in_words(arm.edge),
            .medium = medium.name + (medium.condition.empty() ? "" : ", " + medium.condition)};
  }

  // is_in: the trial has the run of the plan, from wherever it came.
  void stand_as(wire::BenchLine& line, const notebook::BenchRun& run, bool is_in) {
    const bench::Standing standing =
        bench::standing_of({.checkpoint_cuts = {0}, .start_gate = {}}, run.entries);
    line.run = run.uid;
    line.to_cut.name = run.to_cut.name;
    line.cuts = standing.cuts;
    line.state = wire::BenchRunState::under_way;
    if (standing.phase == bench::Phase::voided) line.state = wire::BenchRunState::voided;
    if (standing.phase != bench::Phase::closed) return;
    if (is_in) {
      line.state = wire::BenchRunState::cut;
    } else if (standing.readings.empty()) {
      line.state = wire::BenchRunState::nothing_read;
    } else {
      // The plan may not know it again: what was put in may have been corrected since.
      line.state = was_put_in(run.uid) ? wire::BenchRunState::cut : wire::BenchRunState::taken_out;
    }
  }

  bool was_put_in(const std::string& run_uid) {
    if (!journal_) journal_ = opened_.journal();
    return put_in(*journal_, run_uid).holds.has_value();
  }

  const notebook::Notebook& opened_;
  std::optional<std::vector<notebook::JournalEntry>> journal_;  // once it was asked for
  const TrialAtHand& at_hand_;
  const trials::Trial& trial_;
  const trials::Plan& plan_;
  std::span<const notebook::BenchRun> runs_;
};

}  // namespace

std::vector<wire::BenchLine> bench_lines(const notebook::Notebook& opened,
                                         const TrialAtHand& trial,
                                         std::span<const notebook::BenchRun> runs) {
  return Lines(opened, trial, runs).all();
}

bool has_run_that_reads_as(const TrialAtHand& trial, const trials::Run& cut) {
  const auto reads_as = [](const trials::Reading& one, const trials::Reading& other) {
    return one.cuts == other.cuts && one.reading == other.reading;
  };
  return !cut.readings.empty() &&
         std::ranges::any_of(trial.trial->runs, [&](const trials::Run& run) {
           return run.arm == cut.arm && run.specimen == cut.specimen &&
                  std::ranges::equal(run.readings, cut.readings, reads_as);
         });
}

bool has_run_called(const TrialAtHand& trial, const bench::RunToCut& to_cut) {
  const trials::Plan& plan = trial.asked->plan;
  return std::ranges::any_of(trial.trial->runs, [&](const trials::Run& run) {
    return run.name == to_cut.name && run.specimen == to_cut.specimen &&
           planning::is_of_arm(run, plan.arms.at(to_cut.arm), plan);
  });
}

std::optional<std::size_t> next_of(const std::vector<wire::BenchLine>& lines) {
  using State = wire::BenchRunState;
  const auto first = [&lines](auto is_meant) -> std::optional<std::size_t> {
    const auto found = std::ranges::find_if(lines, is_meant, &wire::BenchLine::state);
    if (found == lines.end()) return std::nullopt;
    return static_cast<std::size_t>(found - lines.begin());
  };
  if (const auto under_way = first([](State state) { return state == State::under_way; })) {
    return under_way;
  }
  if (const auto open = first([](State state) { return !wire::is_done(state); })) return open;
  return first([](State state) { return state == State::voided; });
}

std::size_t left_in_block(const std::vector<wire::BenchLine>& lines, int block) {
  return static_cast<std::size_t>(std::ranges::count_if(lines, [&](const wire::BenchLine& line) {
    return line.to_cut.block == block && line.state != wire::BenchRunState::cut;
  }));
}

// No run of the arm is called so yet.
std::string free_name(const std::string& wanted,
                      const TrialAtHand& trial,
                      const bench::RunToCut& to_cut,
                      std::span<const notebook::BenchRun> runs) {
  const trials::Plan& plan = trial.asked->plan;
  const trials::PlannedArm& arm = plan.arms.at(to_cut.arm);
  const auto is_taken = [&](const std::string& name) {
    return std::ranges::any_of(trial.trial->runs,
                               [&](const trials::Run& run) {
                                 return run.name == name && planning::is_of_arm(run, arm, plan);
                               }) ||
           std::ranges::any_of(runs, [&](const notebook::BenchRun& run) {
             return run.to_cut.arm == to_cut.arm && run.to_cut.name == name;
           });
  };
  return planning::free_run_name(wanted, is_taken);
}

}  // namespace keenfall::workbench
