#include "workbench/judge_tables.h"

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "blunting/times/time_fit.h"
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
#include <optional>
#include <utility>
#include <variant>

namespace keenfall::workbench {

namespace {

using base::Problem;
using base::ProblemKind;
using Judgements = std::vector<verdicts::Judgement>;

base::Result<blunting::ModelSpec> model_named(const std::string& name) {
  if (name == "default") return blunting::default_model();
  if (name == "plain") return blunting::plain_model();
  return base::failed({.kind = ProblemKind::unknown_name,
                       .sentence = "There is no model called \"" + name + "\".",
                       .place = {.column = "--model", .found = name},
                       .accepted = "default, plain"});
}

// The stop reading in the unit of the readings it is compared with.
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

// What gets a judgement of its own.
using Fitted = std::variant<blunting::SeriesKey, blunting::TestKey>;

std::string kind_fitted(const Fitted& fitted) {
  if (const auto* curves = std::get_if<blunting::SeriesKey>(&fitted)) return curves->kind;
  return std::get<blunting::TestKey>(fitted).rung ? "pass_ladder"
                                                  : std::string(verdicts::kEdgeLives);
}

base::Result<std::vector<Fitted>> fits_wanted(const trials::Trial& trial,
                                              const JudgeOptions& options) {
  const std::optional<std::string>& kind = options.kind;
  std::vector<Fitted> all;
  for (const auto& key : blunting::fits_of(trial)) all.push_back(key);
  for (blunting::TestKey test : blunting::tests_of(trial)) {
    if (test.rung && options.rung) test.rung = options.rung;
    all.push_back(std::move(test));
  }
  if (kind) {
    std::string found;
    for (const Fitted& fitted : all) found += (found.empty() ? "" : ", ") + kind_fitted(fitted);
    const trials::ReadingKind* known = trials::find_reading_kind(*kind);
    const std::string wanted = known == nullptr ? *kind : known->name;
    std::erase_if(all, [&wanted](const Fitted& fitted) { return kind_fitted(fitted) != wanted; });
    if (all.empty()) {
      return base::failed(
          {.kind = ProblemKind::unknown_name,
           .sentence = "The table holds nothing of the kind \"" + *kind + "\" that can be judged.",
           .place = {.column = "--kind", .found = *kind},
           .accepted = found.empty() ? "a kind of reading that the table has" : found});
    }
  }
  if (all.empty()) {
    return base::failed(
        {.kind = ProblemKind::unsuitable_data,
         .sentence = "Nothing can be judged: the table holds neither a reading of a kind that "
                     "rises or falls steadily as an edge blunts, nor how long an edge passed a "
                     "test (chips and glint are kept as evidence).",
         .accepted = "at least one such reading, for example thread_push, or an edge life"});
  }
  return all;
}

double cpu_seconds_since(std::clock_t start) {
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

base::Result<JudgedCurves> judge_curves(const trials::Trial& trial,
                                        const blunting::SeriesKey& key,
                                        const blunting::ModelSpec& model,
                                        const std::optional<double>& stop_reading,
                                        const JudgeOptions& options,
                                        const base::Executor& executor,
                                        const base::ProgressReport& progress) {
  const std::clock_t start = std::clock();
  auto data = blunting::prepare(trial, key, model.errors);
  if (!data) return base::failed(data.error());
  auto fit = blunting::fit_blunting(
      *data, model, blunting::sampling_for(*data), options.seed, executor, progress);
  if (!fit) return base::failed(fit.error());
  verdicts::Judgement judgement = verdicts::judge(trial,
                                                  *data,
                                                  *fit,
                                                  {.worth_it_margin = options.worth_it_margin,
                                                   .stop_level = options.stop_level,
                                                   .stop_reading = stop_reading,
                                                   .claim = options.claim,
                                                   .looks = options.looks},
                                                  options.seed);
  verdicts::add_second_opinions(judgement, trial, *data, model);
  judgement.fit.model = model.name;
  judgement.fit.cpu_seconds = cpu_seconds_since(start);
  return JudgedCurves{
      .data = std::move(*data), .fit = std::move(*fit), .judgement = std::move(judgement)};
}

verdicts::LivesQuestion question_about_lives(const JudgeOptions& options) {
  return {
      .worth_it_margin = options.worth_it_margin, .claim = options.claim, .looks = options.looks};
}

base::Result<JudgedLives> judge_test(const trials::Trial& trial,
                                     const blunting::TestKey& test,
                                     const JudgeOptions& options,
                                     const base::Executor& executor,
                                     const base::ProgressReport& progress) {
  const std::clock_t start = std::clock();
  auto data = blunting::prepare_times(trial, test);
  if (!data) return base::failed(data.error());
  if (test.rung) data->level = options.test_level;
  auto fit = blunting::fit_times(*data, {}, options.seed, executor, progress);
  if (!fit) return base::failed(fit.error());
  verdicts::Judgement judgement =
      verdicts::judge_lives(trial, *data, *fit, question_about_lives(options), options.seed);
  if (test.rung && !options.rung) {
    judgement.taken_as.push_back("The pass ladder is judged at rung " + std::to_string(*test.rung) +
                                 ": of all rungs the one that most runs were seen to pass and then "
                                 "to fail; among equals the one most were seen to fail.");
  }
  if (options.stop_level || options.stop_reading) {
    judgement.cannot_say.push_back(
        "A stop level or reading was asked for; a pass-or-fail test has none, so it was not used.");
  }
  judgement.fit.cpu_seconds = cpu_seconds_since(start);
  return JudgedLives{
      .data = std::move(*data), .fit = std::move(*fit), .judgement = std::move(judgement)};
}

// What was made of the fits, in their order, and what could not be.
struct Made {
  std::vector<JudgedCurves> curves;
  std::vector<JudgedLives> lives;
  std::vector<Problem> not_judged;
};

// One kind without a usable run does not take the others down with it.
template <class Judged>
std::optional<Problem> keep(base::Result<Judged> judged,
                            std::vector<Judged>& kept,
                            std::vector<Problem>& not_judged) {
  if (judged) {
    kept.push_back(std::move(*judged));
  } else if (judged.error().kind == ProblemKind::unsuitable_data) {
    not_judged.push_back(judged.error());
  } else {
    return judged.error();
  }
  return std::nullopt;
}

using StopReadings = std::map<std::string, double>;  // by kind, in its series' unit

// Of each kind that the stop reading can be turned into; a problem where it is of none.
base::Result<StopReadings> stop_readings_of(const trials::Trial& trial,
                                            const std::vector<Fitted>& keys,
                                            const std::optional<std::string>& typed) {
  StopReadings found;
  std::optional<Problem> problem;
  for (const Fitted& key : keys) {
    const auto* curves = std::get_if<blunting::SeriesKey>(&key);
    if (curves == nullptr) continue;
    const auto series = std::ranges::find_if(trial.series, [&](const trials::ReadingSeries& one) {
      return one.kind.name == curves->kind;
    });
    const auto stop_reading = stop_reading_in(typed, series->unit);
    if (!stop_reading) {
      problem = stop_reading.error();
    } else if (*stop_reading) {
      found[curves->kind] = **stop_reading;
    }
  }
  if (problem && found.empty()) return base::failed(*problem);
  return found;
}

base::Result<Made> make_all(const trials::Trial& trial,
                            const std::vector<Fitted>& keys,
                            const blunting::ModelSpec& model,
                            const StopReadings& stop_readings,
                            const JudgeOptions& options,
                            const base::Executor& executor,
                            const base::ProgressReport& progress) {
  Made made;
  for (const Fitted& key : keys) {
    std::optional<Problem> problem;
    if (const auto* test = std::get_if<blunting::TestKey>(&key)) {
      problem =
          keep(judge_test(trial, *test, options, executor, progress), made.lives, made.not_judged);
    } else {
      const auto& curves = std::get<blunting::SeriesKey>(key);
      const auto stop_reading = stop_readings.find(curves.kind);
      problem = keep(judge_curves(trial,
                                  curves,
                                  model,
                                  stop_reading == stop_readings.end() ? std::optional<double>()
                                                                      : stop_reading->second,
                                  options,
                                  executor,
                                  progress),
                     made.curves,
                     made.not_judged);
      const bool was_judged =
          !made.curves.empty() && made.curves.back().judgement.kind.name == curves.kind;
      if (options.stop_reading && stop_reading == stop_readings.end() && was_judged) {
        verdicts::Judgement& judgement = made.curves.back().judgement;
        judgement.cannot_say.push_back("The stop reading " + *options.stop_reading +
                                       " is none that a " + judgement.kind.words +
                                       " could be, so it was not used.");
      }
    }
    if (problem) return base::failed(*problem);
  }
  return made;
}

Judgements judgements_of(Made made, std::vector<verdicts::Judgement> between) {
  Judgements judgements;
  for (JudgedCurves& judged : made.curves) judgements.push_back(std::move(judged.judgement));
  for (JudgedLives& judged : made.lives) judgements.push_back(std::move(judged.judgement));
  std::ranges::move(between, std::back_inserter(judgements));
  return judgements;
}

}  // namespace

base::ResultOrProblems<Judgements> judge_trial(const trials::Trial& given,
                                               const JudgeOptions& options,
                                               const base::Executor& executor,
                                               const base::ProgressReport& progress) {
  const auto model = model_named(options.model);
  if (!model) return base::failed_by(model.error());
  std::optional<trials::Trial> stated;  // a copy only where the level is asked for
  if (options.test_level) stated = with_test_level(given, *options.test_level);
  const trials::Trial& trial = stated ? *stated : given;
  const auto keys = fits_wanted(trial, options);
  if (!keys) return base::failed_by(keys.error());
  const auto stop_readings = stop_readings_of(trial, *keys, options.stop_reading);
  if (!stop_readings) return base::failed_by(stop_readings.error());
  auto made = make_all(trial, *keys, *model, *stop_readings, options, executor, progress);
  if (!made) return base::failed_by(made.error());
  if (made->curves.empty() && made->lives.empty()) return base::failed_by(made->not_judged.front());
  const std::vector<Problem> not_judged = made->not_judged;
  const bool idle_level = options.test_level && made->lives.empty();
  auto between = read_against_tested(
      {.trial = trial, .curves = made->curves, .model = *model, .test_level = options.test_level},
      made->lives,
      question_about_lives(options),
      options.seed);
  Judgements judgements = judgements_of(std::move(*made), std::move(between));
  auto& said = judgements.front().cannot_say;
  for (const Problem& problem : not_judged) said.push_back(problem.sentence);
  if (idle_level) {
    said.push_back(
        "A level was given for a pass-or-fail test, but no edge was judged by one, so it was not "
        "used.");
  }
  auto& taken_as = judgements.front().taken_as;
  taken_as.insert(taken_as.begin(), trial.remarks.begin(), trial.remarks.end());
  return judgements;
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
