#include "bench/start_gate.h"

#include "base/require.h"

#include <algorithm>

namespace keenfall::bench {

namespace {

constexpr double kBlunterOnTwo = 1.4;
constexpr double kBlunterThroughout = 1.3;

struct Station {
  std::string name;
  std::vector<double> readings;
};

std::vector<Station> by_station(std::span<const SpotReading> readings) {
  std::vector<Station> stations;
  for (const SpotReading& taken : readings) {
    auto found = std::ranges::find(stations, taken.station, &Station::name);
    if (found == stations.end()) {
      stations.push_back({.name = taken.station, .readings = {}});
      found = stations.end() - 1;
    }
    found->readings.push_back(taken.reading);
  }
  return stations;
}

double median_of(std::vector<double> numbers) {
  std::ranges::sort(numbers);
  const std::size_t middle = numbers.size() / 2;
  return numbers.size() % 2 == 1 ? numbers[middle] : (numbers[middle - 1] + numbers[middle]) / 2;
}

// How many times as blunt as the first the last one is.
double blunted(const std::vector<double>& readings, trials::KeenerWhen keener_when) {
  const double first = readings.front();
  const double last = readings.back();
  return keener_when == trials::KeenerWhen::lower ? last / first : first / last;
}

bool grows_blunter(const std::vector<double>& readings, trials::KeenerWhen keener_when) {
  if (readings.size() < 2) return false;
  if (std::ranges::any_of(readings, [](double reading) { return reading <= 0; })) return false;
  const double times = blunted(readings, keener_when);
  if (readings.size() == 2) return times >= kBlunterOnTwo;
  const bool throughout =
      keener_when == trials::KeenerWhen::lower
          ? std::ranges::adjacent_find(readings, std::greater_equal{}) == readings.end()
          : std::ranges::adjacent_find(readings, std::less_equal{}) == readings.end();
  return throughout && times >= kBlunterThroughout;
}

bool is_within(double reading, const std::optional<GateLimits>& limits) {
  return !limits || (reading >= limits->lowest && reading <= limits->highest);
}

}  // namespace

double combined_reading(std::span<const SpotReading> readings) {
  base::require(!readings.empty(), "something was read");
  std::vector<double> medians;
  for (Station& station : by_station(readings)) {
    medians.push_back(median_of(std::move(station.readings)));
  }
  return median_of(std::move(medians));
}

Start start_of(const RunSheet& sheet, std::span<const SpotReading> readings) {
  Start start{.readings = readings.size()};
  if (sheet.start_gate) {
    const trials::StartGate& gate = *sheet.start_gate;
    start.limits = {.lowest = gate.target_reading * (1 - gate.tolerance_fraction),
                    .highest = gate.target_reading * (1 + gate.tolerance_fraction)};
  }
  for (const Station& station : by_station(readings)) {
    const double median = median_of(station.readings);
    start.stations.push_back(
        {.station = station.name,
         .readings = station.readings.size(),
         .median = median,
         .outside_gate = !is_within(median, start.limits),
         .grows_blunter = grows_blunter(station.readings, sheet.kind.keener_when)});
  }
  start.burr_suspected = std::ranges::any_of(start.stations, &StationStart::grows_blunter);
  if (!readings.empty()) {
    start.combined = combined_reading(readings);
    start.within_gate = is_within(*start.combined, start.limits);
  }
  return start;
}

}  // namespace keenfall::bench
