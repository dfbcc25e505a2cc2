#include "planning/cost.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "blunting/curves/log_logistic.h"
#include "materials/units.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::Plan;

// One run of an arm.
struct RunCost {
  ExpectedAndMost cuts;
  ExpectedAndMost readings;
  ExpectedAndMost minutes;
};

void add(ExpectedAndMost& sum, const ExpectedAndMost& part, double times = 1) {
  sum.expected += times * part.expected;
  sum.most += times * part.most;
}

// Where runs stop, times the start reading; absent: at the last checkpoint.
std::optional<double> stop_level_of(const Plan& plan, const Assumptions& assumptions) {
  if (plan.stop.level) return plan.stop.level;
  if (!plan.stop.reading || *plan.stop.reading <= 0) return std::nullopt;
  const double ratio = *plan.stop.reading / assumptions.start_reading;
  return std::max(ratio, 1 / ratio);  // whichever way is keener
}

// How many of the checkpoints are read by an edge that lasts as expected.
std::size_t checkpoints_read(const std::vector<double>& checkpoints,
                             const blunting::LogLogistic& curve,
                             std::optional<double> stop_level) {
  if (!stop_level || *stop_level <= 1) return checkpoints.size();
  const double stop_cuts = std::exp(log_cuts_to_level(curve, *stop_level));
  const auto at = std::ranges::lower_bound(checkpoints, stop_cuts);
  const auto before = static_cast<std::size_t>(at - checkpoints.begin());
  return std::min(before + 1, checkpoints.size());
}

RunCost run_cost(const Plan& plan,
                 const Assumptions& assumptions,
                 const BenchTimes& times,
                 std::size_t arm) {
  const std::vector<double>& checkpoints = plan.cuttings[plan.arms[arm].cutting].checkpoint_cuts;
  if (checkpoints.empty()) return {};
  const std::size_t read = checkpoints_read(
      checkpoints, expected_curve(plan, assumptions, arm), stop_level_of(plan, assumptions));
  const double repeats = plan.reading.repeats;
  RunCost cost{.cuts = {.expected = checkpoints[read - 1], .most = checkpoints.back()},
               .readings = {.expected = repeats * static_cast<double>(read),
                            .most = repeats * static_cast<double>(checkpoints.size())}};
  const auto minutes = [&times](double cuts, double readings) {
    return times.sharpening_minutes_per_run +
           (cuts * times.seconds_per_cut + readings * times.seconds_per_reading) / 60;
  };
  cost.minutes = {.expected = minutes(cost.cuts.expected, cost.readings.expected),
                  .most = minutes(cost.cuts.most, cost.readings.most)};
  return cost;
}

// Metres of stock that one run of the arm takes.
std::optional<ExpectedAndMost> stock_of(const Plan& plan, std::size_t arm, const RunCost& run) {
  const auto& length_mm = plan.cuttings[plan.arms[arm].cutting].method.cut_length_mm;
  if (!length_mm || plan.counted.is_measured) return std::nullopt;
  return ExpectedAndMost{.expected = run.cuts.expected * *length_mm / 1000,
                         .most = run.cuts.most * *length_mm / 1000};
}

// Blocks are not torn apart where one fits into an evening.
double evenings_for(int blocks, double hours_per_block, double hours_per_evening) {
  if (hours_per_block <= 0) return 0;
  const double fit_in = std::floor(hours_per_evening / hours_per_block);
  if (fit_in >= 1) return std::ceil(blocks / fit_in);
  return blocks * std::ceil(hours_per_block / hours_per_evening);
}

std::string said(double number) { return base::plain_number(number); }

// Whole numbers as they are up to 99, else two or three figures.
std::string about(double number) {
  if (number < 100 && number == std::round(number)) return base::plain_number(number);
  return base::with_figures(number, number < 100 ? 2 : 3);
}

void add_grounds(PlanCost& cost,
                 const Plan& plan,
                 const Assumptions& assumptions,
                 const BenchTimes& times) {
  const auto say = [&cost](std::string sentence) { cost.rests_on.push_back(std::move(sentence)); };
  say("A run takes " + said(times.sharpening_minutes_per_run) + " minutes of sharpening, " +
      said(times.seconds_per_cut) + " seconds for one " + plan.counted.one + " and " +
      said(times.seconds_per_reading) + " seconds for a reading.");
  if (const auto level = stop_level_of(plan, assumptions); level && *level > 1) {
    for (std::size_t c = 0; c < plan.cuttings.size() && c < assumptions.cuttings.size(); ++c) {
      say("Edges in " + plan.cuttings[c].medium.name + " are expected to be half as keen after " +
          so_many(about(assumptions.cuttings[c].half_keenness_cuts), plan.counted) +
          ", and a run stops at the first checkpoint at or beyond " +
          base::plain_number(std::round(10 * *level) / 10) + " times its start reading.");
    }
  } else {
    say("Every run goes to its last checkpoint, since nothing else stops it.");
  }
  say("An evening has " + said(times.hours_per_evening) +
      " hours, and blocks are not torn apart where one fits in.");
}

}  // namespace

PlanCost cost_of(const Plan& plan, const Assumptions& assumptions, const BenchTimes& times) {
  PlanCost cost{.runs = static_cast<int>(plan.arms.size()) * plan.runs_each,
                .blocks = plan.arms.empty() ? 0 : plan.runs_each};
  ExpectedAndMost stock;
  bool stock_is_known = !plan.arms.empty();
  ExpectedAndMost minutes_per_block;
  for (std::size_t arm = 0; arm < plan.arms.size(); ++arm) {
    const RunCost run = run_cost(plan, assumptions, times, arm);
    add(cost.cuts, run.cuts, plan.runs_each);
    add(cost.readings, run.readings, plan.runs_each);
    add(minutes_per_block, run.minutes);
    cost.minutes_per_run.expected = std::max(cost.minutes_per_run.expected, run.minutes.expected);
    cost.minutes_per_run.most = std::max(cost.minutes_per_run.most, run.minutes.most);
    if (const auto metres = stock_of(plan, arm, run)) {
      add(stock, *metres, plan.runs_each);
    } else {
      stock_is_known = false;
    }
  }
  if (stock_is_known) cost.stock_m = stock;
  add(cost.hours_per_block, minutes_per_block, 1.0 / 60);
  add(cost.hours, cost.hours_per_block, cost.blocks);
  const auto evenings = [&](double hours_per_block) {
    return evenings_for(cost.blocks, hours_per_block, times.hours_per_evening);
  };
  cost.evenings = {.expected = evenings(cost.hours_per_block.expected),
                   .most = evenings(cost.hours_per_block.most)};
  if (cost.evenings.expected > 0) cost.blocks_per_evening = cost.blocks / cost.evenings.expected;
  add_grounds(cost, plan, assumptions, times);
  return cost;
}

std::vector<base::Problem> problems_of(const BenchTimes& times) {
  std::vector<base::Problem> problems;
  const auto refuse =
      [&](double number, const std::string& words, const char* field, const std::string& accepted) {
        problems.push_back({.kind = base::ProblemKind::bad_value,
                            .sentence = words + " cannot be " + base::plain_number(number) + ".",
                            .place = {.column = field},
                            .accepted = accepted});
      };
  const auto hold = [&](double number, const char* words, const char* field, double most) {
    if (number >= 0 && number <= most) return;
    refuse(number, words, field, "0 to " + base::plain_number(most));
  };
  hold(times.sharpening_minutes_per_run,
       "The minutes a sharpening takes",
       "sharpening_minutes_per_run",
       1440);
  hold(times.seconds_per_cut, "The seconds one cut takes", "seconds_per_cut", 3600);
  hold(times.seconds_per_reading, "The seconds a reading takes", "seconds_per_reading", 3600);
  const double hours = times.hours_per_evening;
  if (!(hours > 0 && hours <= 24)) {
    refuse(hours, "The hours of an evening", "hours_per_evening", "above 0, up to 24");
  }
  return problems;
}

std::string in_words(const ExpectedAndMost& range, const std::string& unit) {
  const std::string likely = about(range.expected);
  const std::string most = about(range.most);
  const std::string first = unit.empty() ? likely : likely + " " + unit;
  return likely == most ? first : first + " (at most " + most + ")";
}

std::string hours_in_words(const ExpectedAndMost& hours) {
  constexpr double kMinutes = 60;
  const auto in_minutes = [](double hour) { return std::round(hour * kMinutes); };
  const auto is_short = [&](double hour) { return in_minutes(hour) < kMinutes; };
  const auto alone = [&](double hour) {
    const std::string number =
        is_short(hour) ? about(in_minutes(hour)) : about(std::max(hour, 1.0));
    const std::string unit = is_short(hour) ? "minute" : "hour";
    return number + " " + unit + (number == "1" ? "" : "s");
  };
  const std::string likely = alone(hours.expected);
  const std::string most = alone(hours.most);
  if (likely == most) return likely;
  const bool same_unit = is_short(hours.expected) == is_short(hours.most);
  return likely + " (at most " + (same_unit ? most.substr(0, most.find(' ')) : most) + ")";
}

std::string stock_in_words(const ExpectedAndMost& stock_m, const materials::ToldIn& told) {
  const std::string unit = long_length_unit(told);
  const auto one = materials::convert(1, "m", unit);
  base::require(one.has_value(), "a long length is told in a unit of length");
  return in_words({.expected = stock_m.expected * *one, .most = stock_m.most * *one}, unit);
}

std::string in_words(const PlanCost& cost,
                     const trials::Counted& counted,
                     const materials::ToldIn& told) {
  const auto counted_so = [](int count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
  };
  std::string words = counted_so(cost.runs, "run", "runs") + " in " +
                      counted_so(cost.blocks, "block", "blocks") + ": " +
                      in_words(cost.cuts, counted.many);
  if (cost.stock_m) words += ", " + stock_in_words(*cost.stock_m, told) + " of stock";
  words += ", " + in_words(cost.readings, "readings") + "; " + hours_in_words(cost.hours) +
           " at the bench, ";
  const bool one_evening = cost.evenings.expected == 1;
  return words + in_words(cost.evenings, one_evening ? "evening" : "evenings") + ".";
}

}  // namespace keenfall::planning
