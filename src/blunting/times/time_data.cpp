#include "blunting/times/time_data.h"

#include "base/plain_number.h"
#include "blunting/times/ladder_lives.h"

#include <algorithm>
#include <cmath>
#include <variant>

namespace keenfall::blunting {

namespace {

using trials::EdgeLife;
using trials::Run;
using trials::Trial;

bool has_life(const Run& run, const std::string& test) {
  return std::ranges::any_of(run.edge_lives,
                             [&](const EdgeLife& life) { return life.test == test; });
}

// What is known of a run, or why it is not used.
using TimeOrReason = std::variant<TimeRun, std::string>;

// Several lives of one run by one test: all of them hold.
TimeOrReason told_time(const Run& run, const std::string& test) {
  if (!has_life(run, test)) return "not tried by this test";
  TimeRun time;
  bool any = false;
  for (const EdgeLife& life : run.edge_lives) {
    if (life.test != test || life.struck_reason) continue;
    any = true;
    time.lasted_cuts = std::max(time.lasted_cuts, life.lasted_cuts);
    if (life.failed_by_cuts &&
        (!time.failed_by_cuts || *life.failed_by_cuts < *time.failed_by_cuts))
      time.failed_by_cuts = life.failed_by_cuts;
  }
  if (!any) return "every edge life is struck out";
  return time;
}

TimeOrReason ladder_time(const Trial& trial, const Run& run, int rung) {
  const auto life = ladder_life(trial, run, rung);
  if (!life) return "no tries on the pass ladder";
  return TimeRun{.lasted_cuts = life->lasted_cuts,
                 .failed_by_cuts = life->failed_by_cuts,
                 .remarks = life->remarks};
}

std::optional<std::string> why_not_used(const TimeRun& time, const trials::Counted& counted) {
  using base::plain_number;
  if (!time.failed_by_cuts) {
    if (time.lasted_cuts > 0) return std::nullopt;
    return "never seen to fail, nor to pass after the start";
  }
  if (*time.failed_by_cuts <= 0) return "had failed at " + so_many("0", counted);
  if (*time.failed_by_cuts < time.lasted_cuts) {
    return "told to have passed at " + so_many(plain_number(time.lasted_cuts), counted) +
           " and to have failed by " + plain_number(*time.failed_by_cuts);
  }
  return std::nullopt;
}

TimeOrReason time_of(const Trial& trial, const Run& run, const TestKey& test) {
  if (run.voided_reason) return "voided: " + *run.voided_reason;
  TimeOrReason time = test.rung ? ladder_time(trial, run, *test.rung) : told_time(run, test.words);
  if (const TimeRun* known = std::get_if<TimeRun>(&time)) {
    if (const auto reason = why_not_used(*known, trial.counted)) return *reason;
  }
  return time;
}

std::optional<double> common_level(const Trial& trial, const TestKey& test) {
  std::optional<double> level;
  if (test.rung) return level;
  bool first = true;
  for (const Run& run : trial.runs) {
    for (const EdgeLife& life : run.edge_lives) {
      if (life.test != test.words || life.struck_reason) continue;
      if (!first && life.level != level) return std::nullopt;
      level = life.level;
      first = false;
    }
  }
  return level;
}

// The middle of the interval in logs; of an open one, the bound there is.
double middle_of(const LogTimeBounds& bounds) {
  if (std::isinf(bounds.after)) return bounds.by;
  if (std::isinf(bounds.by)) return bounds.after;
  return 0.5 * (bounds.after + bounds.by);
}

}  // namespace

std::vector<TestKey> tests_of(const Trial& trial) {
  std::vector<TestKey> tests;
  std::vector<int> counts;
  for (const Run& run : trial.runs) {
    for (const EdgeLife& life : run.edge_lives) {
      if (std::ranges::find(tests, life.test, &TestKey::words) != tests.end()) continue;
      tests.push_back({.words = life.test});
    }
  }
  const auto runs_by = [&trial](const TestKey& test) {
    return std::ranges::count_if(trial.runs,
                                 [&](const Run& run) { return has_life(run, test.words); });
  };
  std::ranges::stable_sort(
      tests, [&](const TestKey& a, const TestKey& b) { return runs_by(a) > runs_by(b); });
  if (const auto rung = default_rung(trial)) tests.push_back({.rung = rung});
  return tests;
}

LogTimeBounds TimeRun::log_bounds() const {
  LogTimeBounds bounds;
  if (lasted_cuts > 0) bounds.after = std::log(lasted_cuts);
  if (failed_by_cuts) bounds.by = std::log(*failed_by_cuts);
  return bounds;
}

base::Result<TimeData> prepare_times(const Trial& trial, const TestKey& test) {
  TimeData data{.test = test, .level = common_level(trial, test)};
  std::vector<std::size_t> used;
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    TimeOrReason time = time_of(trial, trial.runs[r], test);
    if (const std::string* reason = std::get_if<std::string>(&time)) {
      data.set_aside.push_back({.run = r, .because = *reason});
      continue;
    }
    data.runs.push_back(std::get<TimeRun>(std::move(time)));
    data.runs.back().run = r;
    used.push_back(r);
    data.log_centre += middle_of(data.runs.back().log_bounds());
  }
  if (data.runs.empty()) {
    return base::failed({.kind = base::ProblemKind::unsuitable_data,
                         .sentence = "No run can be judged by how long it lasted: every run is "
                                     "voided, struck out, or says neither how long it lasted nor "
                                     "by when it had failed.",
                         .accepted = "at least one run that lasted so many " + trial.counted.many +
                                     ", or had failed by so many"});
  }
  data.log_centre /= static_cast<double>(data.runs.size());
  data.groups = group_runs(trial, used);
  return data;
}

}  // namespace keenfall::blunting
