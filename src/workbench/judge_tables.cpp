#include "workbench/judge_tables.h"

#include "exchange/long_table.h"
#include "materials/quantity.h"
#include "materials/units.h"
#include "verdicts/judge.h"
#include "verdicts/judge_lives.h"
#include "verdicts/second_opinion.h"
#include "workbench/made_judgements.h"

#include <algorithm>
#include <ctime>
#include <iterator>
#include <map>
#include <memory>
#include <optional>
#include <string_view>
#include <utility>

namespace keenfall::workbench {

namespace {

using base::Problem;
using base::ProblemKind;
using Judgements = std::vector<verdicts::Judgement>;

constexpr std::string_view kQuickModel = "quick";

// The stop reading in the unit that the readings it is compared with are told in.
base::Result<std::optional<double>> stop_reading_in(const std::optional<std::string>& typed,
                                                    const std::string& unit) {
  if (!typed) return std::optional<double>();
  const base::Place place{.column = "--stop-reading", .found = *typed};
  auto quantity = materials::parse_quantity(*typed);
  if (!quantity) {
    Problem problem = quantity.error();
    problem.place = place;
    return base::failed(std::move(problem));
  }
  auto converted = quantity->unit == unit
                       ? base::Result<double>(quantity->number)
                       : materials::convert(quantity->number, quantity->unit, unit);
  if (!converted) {
    Problem problem = converted.error();
    problem.place = place;
    return base::failed(std::move(problem));
  }
  if (!(*converted > 0)) {
    return base::failed({.kind = ProblemKind::bad_value,
                         .sentence = "A stop reading must be above zero.",
                         .place = place,
                         .accepted = "a reading with its unit, such as 400" + unit});
  }
  return std::optional<double>(*converted);
}

using StopReadings = std::map<std::string, double>;  // by kind, in the unit it is told in

// Of each kind that the stop reading can be turned into; a problem where it is of none.
base::Result<StopReadings> stop_readings_of(const trials::Trial& trial,
                                            const JudgeOptions& options) {
  StopReadings found;
  std::optional<Problem> problem;
  const trials::ReadingKind* wanted =
      options.kind ? trials::find_reading_kind(*options.kind) : nullptr;
  for (const blunting::SeriesKey& key : blunting::fits_of(trial)) {
    if (options.kind && key.kind != (wanted == nullptr ? *options.kind : wanted->name)) continue;
    const auto series = std::ranges::find_if(
        trial.series, [&](const trials::ReadingSeries& one) { return one.kind.name == key.kind; });
    const auto stop_reading =
        stop_reading_in(options.stop_reading, told_unit(series->unit, options.told_in));
    if (!stop_reading) {
      problem = stop_reading.error();
    } else if (*stop_reading) {
      found[key.kind] = **stop_reading;
    }
  }
  if (problem && found.empty()) return base::failed(*problem);
  return found;
}

double cpu_seconds_since(std::clock_t start) {
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

// The quick engine's own answer has no second opinion beside it, and what it does not draw is not
// told.
void mark_as_quick(verdicts::Judgement& judgement) {
  judgement.fit.model = kQuickModel;
  judgement.covariates.clear();
  for (verdicts::Comparison& pair : judgement.comparisons) pair.quick.reset();
}

std::shared_ptr<const ToldCurves> told_curves(const FittedTrial& fitted,
                                              const FittedCurves& curves,
                                              const materials::ToldIn& told) {
  const std::string unit = told_unit(curves.recorded.data.unit, told);
  if (unit != curves.recorded.data.unit) {
    return curves.otherwise->in(unit, *fitted.trial, curves.recorded);
  }
  return {std::shared_ptr<void>(), &curves.recorded};  // not owned
}

JudgedCurves judge_curves(const FittedTrial& fitted,
                          const FittedCurves& curves,
                          const StopReadings& stop_readings,
                          const JudgeOptions& options) {
  const std::clock_t start = std::clock();
  const auto stop_reading = stop_readings.find(curves.key.kind);
  const bool stops = stop_reading != stop_readings.end();
  const auto told = told_curves(fitted, curves, options.told_in);
  verdicts::Judgement judgement =
      verdicts::judge(*fitted.trial,
                      told->data,
                      told->fit,
                      told->described,
                      {.worth_it_margin = options.worth_it_margin,
                       .stop_level = options.stop_level,
                       .stop_reading = stops ? std::optional(stop_reading->second) : std::nullopt,
                       .claim = options.claim,
                       .looks = options.looks,
                       .told_in = options.told_in},
                      options.seed);
  verdicts::add_second_opinions(judgement, *fitted.trial, told->data, fitted.model);
  judgement.fit.model = fitted.model.name;
  if (fitted.engine == Engine::quick) mark_as_quick(judgement);
  judgement.fit.cpu_seconds = curves.cpu_seconds + cpu_seconds_since(start);
  if (options.stop_reading && !stops) {
    judgement.cannot_say.push_back("The stop reading " + *options.stop_reading +
                                   " is none that a " + judgement.kind.words +
                                   " could be, so it was not used.");
  }
  return {.fitted = &curves, .judgement = std::move(judgement)};
}

verdicts::LivesQuestion question_about_lives(const JudgeOptions& options) {
  return {.worth_it_margin = options.worth_it_margin,
          .claim = options.claim,
          .looks = options.looks,
          .told_in = options.told_in};
}

JudgedLives judge_test(const FittedTrial& fitted,
                       const FittedLives& lives,
                       const JudgeOptions& options) {
  const std::clock_t start = std::clock();
  verdicts::Judgement judgement = verdicts::judge_lives(
      *fitted.trial, lives.data, lives.fit, question_about_lives(options), options.seed);
  if (lives.test.rung && !options.rung) {
    judgement.taken_as.push_back("The pass ladder is judged at rung " +
                                 std::to_string(*lives.test.rung) +
                                 ": of all rungs the one that most runs were seen to pass and then "
                                 "to fail; among equals the one most were seen to fail.");
  }
  if (options.stop_level || options.stop_reading) {
    judgement.cannot_say.push_back(
        "A stop level or reading was asked for; a pass-or-fail test has none, so it was not used.");
  }
  if (fitted.engine == Engine::quick) mark_as_quick(judgement);
  judgement.fit.cpu_seconds = lives.cpu_seconds + cpu_seconds_since(start);
  return {.fitted = &lives, .judgement = std::move(judgement)};
}

// What was made of the fits, in their order.
struct Made {
  std::vector<JudgedCurves> curves;
  std::vector<JudgedLives> lives;
};

Judgements judgements_of(Made made, std::vector<verdicts::Judgement> between) {
  Judgements judgements;
  for (JudgedCurves& judged : made.curves) judgements.push_back(std::move(judged.judgement));
  for (JudgedLives& judged : made.lives) judgements.push_back(std::move(judged.judgement));
  std::ranges::move(between, std::back_inserter(judgements));
  return judgements;
}

}  // namespace

base::ResultOrProblems<Judgements> judge_fitted(const FittedTrial& fitted,
                                                const JudgeOptions& options) {
  return judge_fitted(fitted, options, base::unwatched());
}

base::ResultOrProblems<Judgements> judge_fitted(const FittedTrial& fitted,
                                                const JudgeOptions& options,
                                                const base::ProgressReport& progress) {
  const auto stop_readings = stop_readings_of(*fitted.trial, options);
  if (!stop_readings) return base::failed_by(stop_readings.error());
  Made made;
  const auto goes_on = [&] {
    const auto done = static_cast<double>(made.curves.size() + made.lives.size());
    const auto all = static_cast<double>(fitted.curves.size() + fitted.lives.size());
    return progress({.fraction_done = done / all, .stage = "comparing the edges"});
  };
  const auto stopped = base::failed_by(
      {.kind = ProblemKind::interrupted, .sentence = "Stopped before the edges were compared."});
  for (const FittedCurves& curves : fitted.curves) {
    if (!goes_on()) return stopped;
    made.curves.push_back(judge_curves(fitted, curves, *stop_readings, options));
  }
  for (const FittedLives& lives : fitted.lives) {
    if (!goes_on()) return stopped;
    made.lives.push_back(judge_test(fitted, lives, options));
  }
  auto between = read_against_tested({.trial = *fitted.trial,
                                      .curves = made.curves,
                                      .model = fitted.model,
                                      .test_level = options.test_level},
                                     made.lives,
                                     question_about_lives(options),
                                     options.seed);
  Judgements judgements = judgements_of(std::move(made), std::move(between));
  auto& said = judgements.front().cannot_say;
  for (const Problem& problem : fitted.not_judged) said.push_back(problem.sentence);
  if (options.test_level && fitted.lives.empty()) {
    said.push_back(
        "A level was given for a pass-or-fail test, but no edge was judged by one, so it was not "
        "used.");
  }
  auto& taken_as = judgements.front().taken_as;
  const std::vector<std::string>& remarks = fitted.trial->remarks;
  taken_as.insert(taken_as.begin(), remarks.begin(), remarks.end());
  return judgements;
}

base::ResultOrProblems<FittedTrial> fit_to_judge(const trials::Trial& given,
                                                 const JudgeOptions& options,
                                                 const base::Executor& executor,
                                                 const base::ProgressReport& progress) {
  // Before the work.
  const auto stop_readings = stop_readings_of(given, options);
  if (!stop_readings) return base::failed_by(stop_readings.error());
  const std::shared_ptr<const trials::Trial> not_owned(std::shared_ptr<void>(), &given);
  return fit_trial(not_owned, options, Engine::full, executor, progress);
}

base::ResultOrProblems<Judgements> judge_trial(const trials::Trial& given,
                                               const JudgeOptions& options,
                                               const base::Executor& executor,
                                               const base::ProgressReport& progress) {
  const auto fitted = fit_to_judge(given, options, executor, progress);
  if (!fitted) return tl::unexpected<std::vector<Problem>>(fitted.error());
  return judge_fitted(*fitted, options);
}

base::ResultOrProblems<JudgedTrial> judge_tables(std::span<const std::string> paths,
                                                 const JudgeOptions& options,
                                                 const base::Executor& executor,
                                                 const base::ProgressReport& progress) {
  auto trial = exchange::take_tables(paths, options.table);
  if (!trial) return tl::unexpected<std::vector<Problem>>(std::move(trial.error()));
  auto judgements = judge_trial(*trial, options, executor, progress);
  if (!judgements) return tl::unexpected<std::vector<Problem>>(std::move(judgements.error()));
  return JudgedTrial{.trial = std::move(*trial), .judgements = std::move(*judgements)};
}

}  // namespace keenfall::workbench
