#include "workbench/fitted_trial.h"

#include "blunting/inference/in_unit.h"
#include "blunting/quick/quick_posterior.h"
#include "blunting/times/quick_times.h"
#include "verdicts/judge_lives.h"
#include "workbench/made_judgements.h"

#include <algorithm>
#include <ctime>
#include <string>
#include <utility>
#include <variant>

namespace keenfall::workbench {

namespace {

using base::Problem;
using base::ProblemKind;

base::Result<blunting::ModelSpec> model_named(const std::string& name) {
  if (name == "default") return blunting::default_model();
  if (name == "plain") return blunting::plain_model();
  return base::failed({.kind = ProblemKind::unknown_name,
                       .sentence = "There is no model called \"" + name + "\".",
                       .place = {.column = "--model", .found = name},
                       .accepted = "default, plain"});
}

// What gets a fit of its own.
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

// What all fits of a trial share.
struct Fitting {
  const trials::Trial& trial;
  const blunting::ModelSpec& model;
  const JudgeOptions& options;
  Engine engine;
  const base::Executor& executor;
  const base::ProgressReport& progress;
};

double seconds_since(std::clock_t start) {
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

base::Result<FittedCurves> fit_curves(const Fitting& fitting, const blunting::SeriesKey& key) {
  const std::clock_t start = std::clock();
  auto data = blunting::prepare(fitting.trial, key, fitting.model.errors);
  if (!data) return base::failed(data.error());
  auto fit =
      fitting.engine == Engine::quick
          ? base::Result<blunting::BluntingFit>(blunting::quick_posterior(*data, fitting.model))
          : blunting::fit_blunting(*data,
                                   fitting.model,
                                   blunting::sampling_for(*data),
                                   fitting.options.seed,
                                   fitting.executor,
                                   fitting.progress);
  if (!fit) return base::failed(fit.error());
  auto described = verdicts::describe_curves(fitting.trial, *data, *fit);
  return FittedCurves{.key = key,
                      .recorded = {.data = std::move(*data),
                                   .fit = std::move(*fit),
                                   .described = std::move(described)},
                      .cpu_seconds = seconds_since(start)};
}

base::Result<FittedLives> fit_lives(const Fitting& fitting, const blunting::TestKey& test) {
  const std::clock_t start = std::clock();
  auto data = blunting::prepare_times(fitting.trial, test);
  if (!data) return base::failed(data.error());
  if (test.rung) data->level = fitting.options.test_level;
  auto fit = fitting.engine == Engine::quick
                 ? base::Result<blunting::TimeFit>(blunting::quick_posterior(*data))
                 : blunting::fit_times(
                       *data, {}, fitting.options.seed, fitting.executor, fitting.progress);
  if (!fit) return base::failed(fit.error());
  return FittedLives{.test = test,
                     .data = std::move(*data),
                     .fit = std::move(*fit),
                     .cpu_seconds = seconds_since(start)};
}

// One kind without a usable run does not take the others down with it.
template <class Fit>
std::optional<Problem> keep(base::Result<Fit> fit,
                            std::vector<Fit>& kept,
                            std::vector<Problem>& not_judged) {
  if (fit) {
    kept.push_back(std::move(*fit));
  } else if (fit.error().kind == ProblemKind::unsuitable_data) {
    not_judged.push_back(fit.error());
  } else {
    return fit.error();
  }
  return std::nullopt;
}

}  // namespace

std::shared_ptr<const ToldCurves> ToldOtherwise::in(const std::string& unit,
                                                    const trials::Trial& trial,
                                                    const ToldCurves& recorded) {
  const std::lock_guard lock(mutex_);
  if (last_ && last_->data.unit == unit) return last_;
  auto told = std::make_shared<ToldCurves>(
      ToldCurves{.data = blunting::in_unit(recorded.data, unit),
                 .fit = blunting::in_unit(recorded.fit, recorded.data, unit)});
  told->described = verdicts::describe_curves(trial, told->data, told->fit);
  last_ = std::move(told);
  return last_;
}

base::ResultOrProblems<FittedTrial> fit_trial(const std::shared_ptr<const trials::Trial>& trial,
                                              const JudgeOptions& options,
                                              Engine engine,
                                              const base::Executor& executor,
                                              const base::ProgressReport& progress) {
  const auto model = model_named(options.model);
  if (!model) return base::failed_by(model.error());
  FittedTrial made{.trial = trial, .engine = engine, .model = *model};
  if (options.test_level) {
    made.trial =
        std::make_shared<const trials::Trial>(with_test_level(*trial, *options.test_level));
  }
  const auto keys = fits_wanted(*made.trial, options);
  if (!keys) return base::failed_by(keys.error());
  const Fitting fitting{*made.trial, *model, options, engine, executor, progress};
  for (const Fitted& key : *keys) {
    const auto* test = std::get_if<blunting::TestKey>(&key);
    auto problem = test != nullptr ? keep(fit_lives(fitting, *test), made.lives, made.not_judged)
                                   : keep(fit_curves(fitting, std::get<blunting::SeriesKey>(key)),
                                          made.curves,
                                          made.not_judged);
    if (problem) return base::failed_by(std::move(*problem));
  }
  if (made.curves.empty() && made.lives.empty()) return base::failed_by(made.not_judged.front());
  return made;
}

}  // namespace keenfall::workbench
