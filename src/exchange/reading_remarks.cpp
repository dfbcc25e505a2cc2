#include "exchange/reading_remarks.h"

#include "base/plain_number.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <set>
#include <tuple>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostReadingRemarks = 10;
constexpr std::size_t kFewestRunsForGaps = 4;
constexpr double kShareThatHasIt = 0.75;
constexpr std::size_t kFewestRunsForFar = 6;
constexpr double kFarInDeviations = 6;
constexpr double kFarAsRatio = 1.5;
constexpr double kOtherUnit = 30;
// Of a normal distribution: its standard deviation is 1.4826 times the median absolute deviation.
constexpr double kDeviationsPerMad = 1.4826;

std::string run_in_words(const trials::Run& run) {
  return "Run " + excerpt(run.name) + " of blade " + excerpt(run.arm.blade) + " in " +
         excerpt(run.arm.medium.name);
}

double median_of(std::vector<double> numbers) {
  std::ranges::sort(numbers);
  const std::size_t half = numbers.size() / 2;
  return numbers.size() % 2 == 1 ? numbers[half] : (numbers[half - 1] + numbers[half]) / 2;
}

void append_limited(std::vector<std::string>& remarks, std::string remark, std::size_t& more) {
  if (remarks.size() < kMostReadingRemarks) {
    remarks.push_back(std::move(remark));
  } else {
    ++more;
  }
}

void say_how_many_more(std::vector<std::string>& remarks, std::size_t more) {
  if (more > 0) {
    remarks.push_back("And " + std::to_string(more) + " more such " +
                      (more == 1 ? "remark." : "remarks."));
  }
}

// The readings of one run of one kind at its checkpoints, struck ones left out.
std::map<double, std::vector<double>> checkpoints_of(const trials::Trial& trial,
                                                     const trials::Run& run,
                                                     const std::string& kind) {
  std::map<double, std::vector<double>> readings;
  for (const trials::Reading& reading : run.readings) {
    if (reading.struck_reason || trial.series[reading.series].kind.name != kind) continue;
    readings[reading.cuts].push_back(reading.reading);
  }
  return readings;
}

std::set<std::string> curve_kinds_of(const trials::Trial& trial) {
  std::set<std::string> kinds;
  for (const trials::ReadingSeries& series : trial.series) {
    if (series.kind.use == trials::ReadingUse::curve) kinds.insert(series.kind.name);
  }
  return kinds;
}

std::string list_of_cuts(const std::vector<double>& cuts) {
  std::string list;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    if (i > 0) list += i + 1 == cuts.size() ? " and " : ", ";
    list += base::plain_number(cuts[i]);
  }
  return list;
}

struct FarReading {
  const trials::Run* run = nullptr;
  double reading = 0;
};

bool has_struck(const trials::Trial& trial,
                const trials::Run& run,
                const std::string& kind,
                double cuts) {
  return std::ranges::any_of(run.readings, [&](const trials::Reading& reading) {
    return reading.struck_reason && reading.cuts == cuts &&
           trial.series.at(reading.series).kind.name == kind;
  });
}

// Of the runs of one arm at one checkpoint, each by the median of its readings.
std::vector<FarReading> far_readings(const std::vector<FarReading>& of_runs) {
  std::vector<FarReading> far;
  if (of_runs.size() < kFewestRunsForFar) return far;
  std::vector<double> logs;
  for (const FarReading& one : of_runs) {
    if (one.reading <= 0) return far;
    logs.push_back(std::log(one.reading));
  }
  const double middle = median_of(logs);
  std::vector<double> distances;
  for (const double log : logs) distances.push_back(std::abs(log - middle));
  const double deviation = kDeviationsPerMad * median_of(distances);
  for (std::size_t i = 0; i < of_runs.size(); ++i) {
    const bool is_far =
        distances[i] > kFarInDeviations * deviation && distances[i] > std::log(kFarAsRatio);
    if (is_far) far.push_back(of_runs[i]);
  }
  return far;
}

}  // namespace

std::vector<std::string> remarks_on_gaps(const trials::Trial& trial) {
  std::vector<std::string> remarks;
  std::size_t more = 0;
  for (const std::string& kind : curve_kinds_of(trial)) {
    std::map<std::string, std::map<double, std::size_t>> runs_at;  // by medium, then cuts
    std::map<std::string, std::size_t> runs_in;
    for (const trials::Run& run : trial.runs) {
      const auto readings = checkpoints_of(trial, run, kind);
      if (readings.empty()) continue;
      ++runs_in[run.arm.medium.name];
      for (const auto& [cuts, of_run] : readings) ++runs_at[run.arm.medium.name][cuts];
    }
    for (const trials::Run& run : trial.runs) {
      const auto readings = checkpoints_of(trial, run, kind);
      const std::size_t runs = runs_in[run.arm.medium.name];
      if (readings.empty() || runs < kFewestRunsForGaps) continue;
      std::vector<double> missed;
      std::vector<double> struck;
      for (const auto& [cuts, count] : runs_at[run.arm.medium.name]) {
        const bool is_usual =
            static_cast<double>(count) >= kShareThatHasIt * static_cast<double>(runs);
        if (is_usual && !readings.contains(cuts) && cuts < readings.rbegin()->first) {
          (has_struck(trial, run, kind, cuts) ? struck : missed).push_back(cuts);
        }
      }
      const auto remark = [&](const std::vector<double>& at, const std::string& what) {
        if (at.empty()) return;
        append_limited(remarks,
                       run_in_words(run) + what + so_many(list_of_cuts(at), trial.counted) +
                           ", where most of the others have one.",
                       more);
      };
      remark(missed, " has no reading at ");
      remark(struck, " has no reading that is not struck out at ");
    }
  }
  say_how_many_more(remarks, more);
  return remarks;
}

std::vector<std::string> remarks_on_far_readings(const trials::Trial& trial) {
  std::vector<std::string> remarks;
  std::size_t more = 0;
  for (const std::string& kind : curve_kinds_of(trial)) {
    std::map<std::tuple<std::string, std::string, double>, std::vector<FarReading>> of_runs;
    for (const trials::Run& run : trial.runs) {
      if (run.voided_reason) continue;
      for (const auto& [cuts, readings] : checkpoints_of(trial, run, kind)) {
        of_runs[{run.arm.blade, run.arm.medium.name, cuts}].push_back(
            {.run = &run, .reading = median_of(readings)});
      }
    }
    for (const auto& [where, readings] : of_runs) {
      for (const FarReading& far : far_readings(readings)) {
        append_limited(remarks,
                       run_in_words(*far.run) + " reads " + base::with_figures(far.reading, 3) +
                           " at " +
                           so_many(base::plain_number(std::get<double>(where)), trial.counted) +
                           ", far from the blade's other runs there. If it is a slip, strike it "
                           "with a reason.",
                       more);
      }
    }
  }
  say_how_many_more(remarks, more);
  return remarks;
}

std::vector<std::string> remarks_on_units(const trials::Trial& trial) {
  std::vector<std::string> remarks;
  std::size_t more = 0;
  for (const std::string& kind : curve_kinds_of(trial)) {
    std::vector<FarReading> firsts;
    for (const trials::Run& run : trial.runs) {
      const auto readings = checkpoints_of(trial, run, kind);
      if (run.voided_reason || readings.empty()) continue;
      const double first = median_of(readings.begin()->second);
      if (first > 0) firsts.push_back({.run = &run, .reading = first});
    }
    if (firsts.size() < 2) continue;
    std::vector<double> all;
    for (const FarReading& one : firsts) all.push_back(one.reading);
    // Of two alone neither is the odd one: the second is asked about.
    const double usual = firsts.size() == 2 ? all.front() : median_of(all);
    for (const FarReading& one : firsts) {
      if (std::abs(std::log(one.reading / usual)) < std::log(kOtherUnit)) continue;
      append_limited(remarks,
                     run_in_words(*one.run) + " begins at " + base::with_figures(one.reading, 3) +
                         ", where the others begin at about " + base::with_figures(usual, 3) +
                         ". Is it in another unit? A column unit says so.",
                     more);
    }
  }
  say_how_many_more(remarks, more);
  return remarks;
}

}  // namespace keenfall::exchange
