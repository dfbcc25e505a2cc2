#include "verdicts/what_was_seen.h"

#include "base/plain_number.h"
#include "numerics/summaries.h"
#include "verdicts/lasting.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace keenfall::verdicts {

namespace {

using base::plain_number;
using blunting::BluntingData;
using blunting::BluntingFit;
using blunting::Checkpoint;

std::string said(double reading) { return base::with_figures(reading, 3); }

// How far two checkpoints of one run may lie apart by the scatter of their repeats alone (log).
double noise_between(const BluntingData& data, const Checkpoint& first, const Checkpoint& second) {
  if (data.repeat_degrees_of_freedom < 8) return 1e-9;
  const double variance = data.repeat_sum_of_squares / data.repeat_degrees_of_freedom;
  return 3 * std::sqrt(variance * (first.relative_variance + second.relative_variance));
}

std::vector<std::string> falls_of(const BluntingData& data,
                                  const blunting::RunData& run,
                                  const trials::Counted& counted) {
  std::vector<std::string> remarks;
  for (std::size_t k = 1; k < run.checkpoints.size(); ++k) {
    const Checkpoint& before = run.checkpoints[k - 1];
    const Checkpoint& after = run.checkpoints[k];
    if (before.below_resolution || after.below_resolution) continue;
    if (before.log_bluntness - after.log_bluntness <= noise_between(data, before, after)) continue;
    const std::string first = said(std::exp(log_reading_of(data, before.log_bluntness)));
    const std::string then = said(std::exp(log_reading_of(data, after.log_bluntness)));
    if (first == then) continue;
    remarks.push_back("gets keener from " + plain_number(before.cuts) + " to " +
                      so_many(plain_number(after.cuts), counted) + " (" + first + " to " + then +
                      " " + data.unit + ")");
  }
  return remarks;
}

std::vector<std::string> zeros_of(const BluntingData& data,
                                  const blunting::RunData& run,
                                  const trials::Counted& counted) {
  std::vector<std::string> remarks;
  for (const Checkpoint& checkpoint : run.checkpoints) {
    if (!checkpoint.below_resolution) continue;
    remarks.push_back("reads zero at " + so_many(plain_number(checkpoint.cuts), counted) +
                      ": taken as below " +
                      asked_reading_text(std::exp(log_reading_of(data, checkpoint.log_bluntness))) +
                      " " + data.unit);
  }
  return remarks;
}

RunResult as_recorded(const trials::Trial& trial,
                      const trials::Run& run,
                      const BluntingData& data) {
  RunResult result{
      .name = run.name, .specimen = run.specimen, .block = run.block, .order = run.order};
  for (const trials::Reading& reading : run.readings) {
    const trials::ReadingSeries& series = trial.series.at(reading.series);
    if (series.kind.name != data.kind.name || series.thread != data.thread) continue;
    ++(reading.struck_reason ? result.readings_struck : result.readings_used);
    if (!reading.struck_reason && reading.doubtful_reason) ++result.readings_doubtful;
    result.last_cuts = std::max(result.last_cuts, reading.cuts);
  }
  result.remarks = recorded_remarks(run, trial.counted);
  return result;
}

std::string name_of(const trials::Arm& arm) {
  std::string words = arm.blade + " on " + arm.medium.name;
  return words;
}

}  // namespace

bool often_never_blunts(const ArmResult& arm) {
  return arm.runs_that_never_blunt >= 2 && 5 * arm.runs_that_never_blunt >= arm.runs;
}

std::vector<std::string> recorded_remarks(const trials::Run& run, const trials::Counted& counted) {
  std::vector<std::string> remarks;
  for (const trials::Event& event : run.events) {
    remarks.push_back(event.as_written + " at " + so_many(plain_number(event.cuts), counted));
  }
  for (const std::string& deviation : run.deviations) remarks.push_back("deviation: " + deviation);
  for (const std::string& note : run.notes) remarks.push_back(note);
  return remarks;
}

std::vector<RunResult> run_results(const trials::Trial& trial,
                                   const BluntingData& data,
                                   const BluntingFit& fit) {
  std::vector<RunResult> results;
  for (const trials::Run& run : trial.runs) {
    results.push_back(as_recorded(trial, run, data));
    const auto arm = std::ranges::find(data.arms, run.arm);
    results.back().arm = static_cast<std::size_t>(arm - data.arms.begin());
    results.back().run = results.size() - 1;
  }
  for (const blunting::RunAside& aside : data.set_aside) {
    results[aside.run].not_used_because = aside.because;
    results[aside.run].readings_used = 0;
  }
  const At half{.what = ComparedAt::half_keenness};
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    RunResult& result = results[data.runs[r].run];
    result.checkpoints = static_cast<int>(data.runs[r].checkpoints.size());
    blunting::Draws log_start = fit.runs[r].log_start;
    for (double& draw : log_start) draw = log_reading_of(data, draw);
    result.start_reading = numerics::exp_of(numerics::interval_of(std::move(log_start)));
    result.half_keenness_cuts =
        numerics::exp_of(numerics::interval_of(fit.runs[r].log_half_keenness));
    result.stopped_before_half_keenness = !run_reached(data, fit, r, half);
    for (const std::string& remark : zeros_of(data, data.runs[r], trial.counted))
      result.remarks.push_back(remark);
    for (const std::string& remark : falls_of(data, data.runs[r], trial.counted))
      result.remarks.push_back(remark);
  }
  return results;
}

std::optional<std::string> half_keenness_unreached(const Judgement& judgement,
                                                   const ArmResult& arm) {
  if (!arm.half_keenness || !arm.half_keenness->at_least()) return std::nullopt;
  const std::string many = judgement.counted.many;
  std::string words = "No run of " + name_of(arm.arm) + " reached half keenness by " +
                      so_many(plain_number(arm.longest_run_cuts), judgement.counted) +
                      ", where the longest was stopped, so its " + many +
                      " to half keenness are said as \"at least\", the lower end of the 95 % "
                      "interval.";
  if (*arm.half_keenness->at_least() < arm.longest_run_cuts) {
    words += " That is less than was cut, since another edge of it may last less than these did.";
  }
  return words;
}

// What a curve that only rises cannot describe.
void say_what_never_blunts(const Judgement& judgement, std::vector<std::string>& sentences) {
  for (const ArmResult& arm : judgement.arms) {
    if (!often_never_blunts(arm)) continue;
    sentences.push_back(
        std::to_string(arm.runs_that_never_blunt) + " of " + std::to_string(arm.runs) +
        " runs of " + name_of(arm.arm) +
        " end no blunter than they began: a curve that only rises does not describe "
        "them, and " +
        judgement.counted.many + " to half keenness mean little there.");
  }
}

std::vector<std::string> what_cannot_be_said(const trials::Trial& trial,
                                             const BluntingData& data,
                                             const Judgement& judgement) {
  std::vector<std::string> sentences;
  for (const ArmResult& arm : judgement.arms) {
    if (arm.runs == 1) {
      sentences.push_back(
          "One run of " + name_of(arm.arm) +
          ": how much it scatters from run to run is borrowed from " +
          (judgement.arms.size() > 1 ? "the other arms." : "common experience, not seen here."));
    }
    if (const auto unreached = half_keenness_unreached(judgement, arm)) {
      sentences.push_back(*unreached);
    }
  }
  say_what_never_blunts(judgement, sentences);
  int without_start = 0;
  for (const blunting::RunData& run : data.runs) {
    if (run.checkpoints.front().cuts > 0) ++without_start;
  }
  if (without_start > 0) {
    sentences.push_back(std::to_string(without_start) + " of " + std::to_string(data.runs.size()) +
                        " runs have no reading at " + so_many("0", trial.counted) +
                        "; where they started is inferred from the rest.");
  }
  if (data.repeat_degrees_of_freedom == 0) {
    sentences.push_back(
        "No checkpoint was read twice, so the error of a reading cannot be told from the spot that "
        "was read.");
  }
  if (judgement.comparisons.empty() && judgement.fit.usable) {
    sentences.push_back(
        "There is nothing to compare: no two arms were cut in one medium by one method.");
  }
  const bool any_block =
      std::ranges::any_of(trial.runs, [](const trials::Run& run) { return !run.block.empty(); });
  if (!any_block && data.runs.size() > 2) {
    sentences.push_back(
        "No blocks are recorded: a drift of day, lot or stone cannot be told from a difference of "
        "blades.");
  }
  return sentences;
}

void add_claim_not_made(Judgement& judgement, std::optional<ClaimAbout> asked) {
  const bool unmet = std::ranges::any_of(judgement.comparisons, [](const Comparison& pair) {
    return pair.claim_about == ClaimAbout::these_blades;
  });
  if (asked != ClaimAbout::the_steels || !unmet) return;
  judgement.cannot_say.push_back(
      "A claim about the steels was asked for, but takes several specimens of both; where there "
      "are not, the ratio is about these blades.");
}

}  // namespace keenfall::verdicts
