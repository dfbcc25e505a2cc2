// For tests: a report of the judgement in made_judgement_test.h, on readings made by hand.
#pragma once

#include "telling/report.h"
#include "verdicts/made_judgement_test.h"

#include <utility>

namespace keenfall::telling::testing {

// One run of each arm; in the first a struck and a doubtful reading, and something happened.
inline trials::Trial made_trial(const verdicts::Judgement& judgement) {
  trials::Trial trial{
      .name = judgement.trial,
      .blades = {{.name = "A", .steel = "C75S", .hardness = trials::Hardness{.reading = 58}},
                 {.name = "B"},
                 {.name = "C",
                  .steel = "X153CrMoV12",
                  .specimens = {{.name = "C1", .hardness = trials::Hardness{.reading = 61}},
                                {.name = "C2"}}}},
      .series = {{.kind = judgement.kind, .unit = "gf", .thread = judgement.thread}}};
  for (const verdicts::ArmResult& arm : judgement.arms) {
    trial.runs.push_back({.name = "1",
                          .arm = arm.arm,
                          .block = "1",
                          .order = 3,
                          .readings = {{.cuts = 0, .reading = 80},
                                       {.cuts = 0, .reading = 125},
                                       {.cuts = arm.longest_run_cuts, .reading = 400}}});
  }
  trials::Run& first = trial.runs.front();
  first.readings[0].station = "heel";
  first.readings[0].repeat = 1;
  first.readings.insert(first.readings.begin() + 2,
                        {{.cuts = 0, .reading = 900, .struck_reason = "slipped"},
                         {.cuts = 0, .reading = 100, .doubtful_reason = "shook"}});
  first.events = {{.kind = trials::EventKind::twisted, .cuts = 12, .as_written = "twisted a bit"}};
  return trial;
}

inline Report made_report(verdicts::Judgement judgement = verdicts::testing::made_judgement()) {
  Report report{.title = "The matting bench",
                .written_on = "2026-11-26",
                .program_version = "0.1.0",
                .from = {"readings.csv"},
                .trial = made_trial(judgement)};
  auto runs = verdicts::reported_runs(report.trial, judgement);
  report.judgements.push_back({.judgement = std::move(judgement), .runs = std::move(runs)});
  return report;
}

}  // namespace keenfall::telling::testing
