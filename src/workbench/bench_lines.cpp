#include "workbench/bench_lines.h"

#include "bench/standing.h"
#include "trials/edge.h"

#include <algorithm>
#include <utility>

namespace keenfall::workbench {

namespace {

bool is_of_arm(const trials::Run& run, const trials::PlannedArm& arm, const trials::Plan& plan) {
  const trials::PlannedCutting& cutting = plan.cuttings.at(arm.cutting);
  return run.arm.blade == arm.blade && run.arm.edge == arm.edge &&
         run.arm.medium == cutting.medium && run.arm.method == cutting.method;
}

class Lines {
 public:
  Lines(const TrialAtHand& trial, std::span<const notebook::BenchRun> runs)
      : trial_(*trial.trial), plan_(trial.asked->plan), runs_(runs) {}

  std::vector<wire::BenchLine> all() {
    std::vector<wire::BenchLine> lines;
    for (const trials::PlannedRun& planned : plan_.runs) {
      wire::BenchLine line = line_of({.name = std::to_string(planned.block),
                                      .arm = planned.arm,
                                      .specimen = planned.specimen,
                                      .block = planned.block,
                                      .order = planned.order});
      for (const notebook::BenchRun& run : runs_) {
        if (run.to_cut.order == planned.order) stand_as(line, run);
      }
      if (line.run.empty() && is_recorded(planned)) line.state = wire::BenchRunState::cut;
      lines.push_back(std::move(line));
    }
    for (const notebook::BenchRun& run : runs_) {
      if (run.to_cut.order || run.to_cut.arm >= plan_.arms.size()) continue;
      wire::BenchLine line = line_of(run.to_cut);
      stand_as(line, run);
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

  void stand_as(wire::BenchLine& line, const notebook::BenchRun& run) const {
    const bench::Standing standing =
        bench::standing_of({.checkpoint_cuts = {0}, .start_gate = {}}, run.entries);
    line.run = run.uid;
    line.to_cut.name = run.to_cut.name;
    line.cuts = standing.cuts;
    line.state = wire::BenchRunState::under_way;
    if (standing.phase == bench::Phase::closed) line.state = wire::BenchRunState::cut;
    if (standing.phase == bench::Phase::voided) line.state = wire::BenchRunState::voided;
  }

  // Typed from paper, say.
  bool is_recorded(const trials::PlannedRun& planned) const {
    const trials::PlannedArm& arm = plan_.arms.at(planned.arm);
    return std::ranges::any_of(trial_.runs, [&](const trials::Run& run) {
      return run.order == planned.order && is_of_arm(run, arm, plan_) && !run.voided_reason;
    });
  }

  const trials::Trial& trial_;
  const trials::Plan& plan_;
  std::span<const notebook::BenchRun> runs_;
};

}  // namespace

std::vector<wire::BenchLine> bench_lines(const TrialAtHand& trial,
                                         std::span<const notebook::BenchRun> runs) {
  return Lines(trial, runs).all();
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
           is_of_arm(run, plan.arms.at(to_cut.arm), plan);
  });
}

std::optional<std::size_t> next_of(const std::vector<wire::BenchLine>& lines) {
  using enum wire::BenchRunState;
  for (const wire::BenchRunState state : {under_way, to_cut, voided}) {
    const auto found = std::ranges::find(lines, state, &wire::BenchLine::state);
    if (found != lines.end()) return static_cast<std::size_t>(found - lines.begin());
  }
  return std::nullopt;
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
                                 return run.name == name && is_of_arm(run, arm, plan);
                               }) ||
           std::ranges::any_of(runs, [&](const notebook::BenchRun& run) {
             return run.to_cut.arm == to_cut.arm && run.to_cut.name == name;
           });
  };
  std::string name = wanted;
  for (int again = 2; is_taken(name); ++again) name = wanted + " again " + std::to_string(again);
  return name;
}

}  // namespace keenfall::workbench
