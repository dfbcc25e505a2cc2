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

#include <algorithm>
#include <ctime>
#include <variant>

namespace keenfall::workbench {

namespace {

using base::Problem;
using base::ProblemKind;
using Judgements = std::vector<verdicts::Judgement>;

tl::unexpected<std::vector<Problem>> refused(Problem problem) {
  return tl::unexpected<std::vector<Problem>>(std::vector<Problem>{std::move(problem)});
}

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
      return base::failed({.kind = ProblemKind::unknown_name,
                           .sentence = "There are no readings of the kind \"" + *kind +
                                       "\" that a curve can be fitted to.",
                           .place = {.column = "--kind", .found = *kind},
                           .accepted = found.empty() ? "a kind of reading for curves" : found});
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

base::Result<verdicts::Judgement> judge_curves(const trials::Trial& trial,
                                               const blunting::SeriesKey& key,
                                               const blunting::ModelSpec& model,
                                               const JudgeOptions& options,
                                               const base::Executor& executor,
                                               const base::ProgressReport& progress) {
  const std::clock_t start = std::clock();
  const auto data = blunting::prepare(trial, key, model.errors);
  if (!data) return base::failed(data.error());
  const auto stop_reading = stop_reading_in(options.stop_reading, data->unit);
  if (!stop_reading) return base::failed(stop_reading.error());
  const auto fit = blunting::fit_blunting(
      *data, model, blunting::sampling_for(*data), options.seed, executor, progress);
  if (!fit) return base::failed(fit.error());
  verdicts::Judgement judgement = verdicts::judge(trial,
                                                  *data,
                                                  *fit,
                                                  {.worth_it_margin = options.worth_it_margin,
                                                   .stop_level = options.stop_level,
                                                   .stop_reading = *stop_reading,
                                                   .claim = options.claim,
                                                   .looks = options.looks},
                                                  options.seed);
  verdicts::add_second_opinions(judgement, trial, *data, model);
  judgement.fit.model = model.name;
  judgement.fit.cpu_seconds = cpu_seconds_since(start);
  return judgement;
}

base::Result<verdicts::Judgement> judge_test(const trials::Trial& trial,
                                             const blunting::TestKey& test,
                                             const JudgeOptions& options,
                                             const base::Executor& executor,
                                             const base::ProgressReport& progress) {
  const std::clock_t start = std::clock();
  const auto data = blunting::prepare_times(trial, test);
  if (!data) return base::failed(data.error());
  const auto fit = blunting::fit_times(*data, {}, options.seed, executor, progress);
  if (!fit) return base::failed(fit.error());
  verdicts::Judgement judgement = verdicts::judge_lives(
      trial,
      *data,
      *fit,
      {.worth_it_margin = options.worth_it_margin, .claim = options.claim, .looks = options.looks},
      options.seed);
  if (test.rung && !options.rung) {
    judgement.taken_as.push_back("The pass ladder is judged at rung " + std::to_string(*test.rung) +
                                 ": of all rungs the one that most runs were seen to pass and then "
                                 "to fail, and the keenest of those.");
  }
  if (options.stop_level || options.stop_reading) {
    judgement.cannot_say.push_back(
        "A stop level or reading was asked for; a pass-or-fail test has none, so it was not used.");
  }
  judgement.fit.cpu_seconds = cpu_seconds_since(start);
  return judgement;
}

base::Result<verdicts::Judgement> judge_one(const trials::Trial& trial,
                                            const Fitted& fitted,
                                            const blunting::ModelSpec& model,
                                            const JudgeOptions& options,
                                            const base::Executor& executor,
                                            const base::ProgressReport& progress) {
  if (const auto* test = std::get_if<blunting::TestKey>(&fitted)) {
    return judge_test(trial, *test, options, executor, progress);
  }
  const auto& curves = std::get<blunting::SeriesKey>(fitted);
  return judge_curves(trial, curves, model, options, executor, progress);
}

}  // namespace

base::ResultOrProblems<Judgements> judge_trial(const trials::Trial& trial,
                                               const JudgeOptions& options,
                                               const base::Executor& executor,
                                               const base::ProgressReport& progress) {
  const auto model = model_named(options.model);
  if (!model) return refused(model.error());
  const auto keys = fits_wanted(trial, options);
  if (!keys) return refused(keys.error());
  Judgements judgements;
  std::vector<std::string> not_judged;
  std::optional<Problem> first_problem;
  for (const Fitted& key : *keys) {
    auto judgement = judge_one(trial, key, *model, options, executor, progress);
    if (judgement) {
      judgements.push_back(std::move(*judgement));
      continue;
    }
    // One kind without a usable run does not take the others down with it.
    if (judgement.error().kind != ProblemKind::unsuitable_data) return refused(judgement.error());
    if (!first_problem) first_problem = judgement.error();
    not_judged.push_back(judgement.error().sentence);
  }
  if (judgements.empty()) return refused(*first_problem);
  auto& said = judgements.front().cannot_say;
  said.insert(said.end(), not_judged.begin(), not_judged.end());
  auto& taken_as = judgements.front().taken_as;
  taken_as.insert(taken_as.begin(), trial.remarks.begin(), trial.remarks.end());
  return judgements;
}

base::ResultOrProblems<Judgements> judge_tables(std::span<const std::string> paths,
                                                const JudgeOptions& options,
                                                const base::Executor& executor,
                                                const base::ProgressReport& progress) {
  auto trial = exchange::take_tables(paths, options.table);
  if (!trial) return tl::unexpected<std::vector<Problem>>(std::move(trial.error()));
  return judge_trial(*trial, options, executor, progress);
}

}  // namespace keenfall::workbench
