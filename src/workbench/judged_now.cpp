#include "workbench/judged_now.h"

#include "base/require.h"
#include "planning/own_repeatability.h"
#include "workbench/judge_tables.h"
#include "workbench/own_question.h"
#include "workbench/plan_followed.h"
#include "workbench/report.h"
#include "workbench/trial_table.h"

#include <cstddef>
#include <filesystem>
#include <memory>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

using base::Problem;
using Problems = std::vector<Problem>;
using Judgements = std::vector<verdicts::Judgement>;
using Seen = std::shared_ptr<const TrialAtHand>;

// Where the steps of a judging end, as fractions of it.
struct StepsEnd {
  double fitted = 0;
  double judged = 0;
};

constexpr StepsEnd steps_end(Engine engine) {
  return engine == Engine::quick ? StepsEnd{0.2, 0.7} : StepsEnd{0.95, 0.98};
}

base::ProgressReport step_of(const base::ProgressReport& whole, double from, double to) {
  return [&whole, from, to](const base::Progress& step) {
    return whole({.fraction_done = from + step.fraction_done * (to - from), .stage = step.stage});
  };
}

auto stopped_judging() {
  return base::failed_by({.kind = base::ProblemKind::interrupted,
                          .sentence = "Stopped before there was an answer; nothing was kept."});
}

FitWanted fit_for(const TrialToJudge& asked, const Seen& seen, Engine engine) {
  return {.trial = seen->trial,
          .with_struck = asked.question.with_struck,
          .kind = asked.question.kind,
          .seed = asked.question.seed.value_or(JudgeOptions().seed.number),
          .engine = engine};
}

std::shared_ptr<const trials::Trial> as_if_not_struck(const trials::Trial& trial) {
  trials::Trial changed = trial;
  for (trials::Run& run : changed.runs) {
    for (trials::Reading& reading : run.readings) reading.struck_reason.reset();
    for (trials::EdgeLife& life : run.edge_lives) life.struck_reason.reset();
  }
  return std::make_shared<const trials::Trial>(std::move(changed));
}

base::ResultOrProblems<FitAtHand> fit_now(const FitWanted& wanted,
                                          const JudgeOptions& options,
                                          const base::Executor& executor,
                                          const base::ProgressReport& progress) {
  const auto trial = wanted.with_struck ? as_if_not_struck(*wanted.trial) : wanted.trial;
  auto fitted = fit_trial(trial, options, wanted.engine, executor, progress);
  if (!fitted) return tl::unexpected<Problems>(std::move(fitted.error()));
  return FitAtHand{.of = wanted,
                   .fitted = std::make_shared<const FittedTrial>(std::move(*fitted)),
                   .not_in_its_table = trial_table(*trial).left_out};
}

// Counts it where it is the trial's own question and was not counted yet, by nobody at the same
// time either.
CountedLook counted_once(AtHand& at_hand,
                         const TrialToJudge& asked,
                         const Seen& seen,
                         const FitAtHand& fit,
                         const JudgeOptions& options,
                         const Judgements& judgements) {
  if (fit.of.engine == Engine::quick || !is_own_question(asked.question, *seen)) return {};
  if (options.told_in != materials::ToldIn{}) {
    const JudgeOptions as_recorded = told_as_recorded(options);
    const auto recorded = judge_fitted(*fit.fitted, as_recorded);
    base::require(recorded.has_value(), "what is judged in one unit is judged in another");
    return counted_once(at_hand, asked, seen, fit, as_recorded, *recorded);
  }
  const auto lock = at_hand.fits.counting();
  // Those that were counted while this was fitted are there, too.
  const auto newest = at_hand.trials.trial(asked.notebook, asked.uid);
  std::vector<notebook::Look> looks;
  for (const LookAtHand& look : (newest ? *newest : seen)->looks) {
    looks.push_back({.judgement = {.inputs = look.inputs, .question = look.question}});
  }
  return count_look({.notebook = asked.notebook,
                     .trial = *seen->trial,
                     .looks = looks,
                     .last_entry = seen->place.entry,
                     .is_counted_once = true},
                    options,
                    asked.by,
                    judgements);
}

// As it was answered. Without a level or a reading half keenness is asked; naming one would ask
// something else.
wire::Question answered_question(const TrialToJudge& asked, const JudgeOptions& options) {
  wire::Question question = asked.question;
  question.worth_it_margin = options.worth_it_margin;
  question.stop_level = options.stop_level;
  question.stop_reading = options.stop_reading;
  question.seed = options.seed.number;
  return question;
}

// A plan with one arm is there to measure it.
std::string own_scatter_words(const TrialAtHand& trial, const verdicts::Judgement& judgement) {
  if (!trial.asked || trial.asked->plan.arms.size() != 1 || judgement.arms.size() != 1) return {};
  const auto scatter = planning::own_scatter(judgement, 0);
  return scatter ? in_words(*scatter, judgement.arms.front().arm.blade) : scatter.error().sentence;
}

base::ResultOrProblems<wire::Judged> judged_from(AtHand& at_hand,
                                                 const TrialToJudge& asked,
                                                 const Seen& seen,
                                                 FitAtHand fit,
                                                 const base::ProgressReport& progress) {
  JudgeOptions options = options_for(asked.question, *seen);
  options.told_in = asked.told_in;
  const StepsEnd ends = steps_end(fit.of.engine);
  auto judgements = judge_fitted(*fit.fitted, options, step_of(progress, ends.fitted, ends.judged));
  if (!judgements) return tl::unexpected<Problems>(std::move(judgements.error()));
  if (!progress({.fraction_done = ends.judged, .stage = "writing the answer down"})) {
    return stopped_judging();  // before it is counted
  }
  CountedLook counted = counted_once(at_hand, asked, seen, fit, options, *judgements);
  if (counted.caution) judgements->front().cannot_say.push_back(std::move(*counted.caution));
  wire::Judged judged{.is_quick = fit.of.engine == Engine::quick,
                      .of_entry = seen->place.entry,
                      .question = answered_question(asked, options),
                      .can_ask_again = true,
                      .counted_words = std::move(counted.kept_words),
                      .own_scatter_words = own_scatter_words(*seen, judgements->front())};
  judged.report = report_of({.trial = *fit.fitted->trial,
                             .judgements = std::move(*judgements),
                             .from = {std::filesystem::path(asked.notebook).filename().string()},
                             .not_in_its_table = std::move(fit.not_in_its_table)},
                            options,
                            asked.by);
  if (seen->asked) {
    judged.report.planned = planned_and_done(*seen->asked, *seen->trial, options);
  }
  if (asked.question.with_struck) {
    // Strikes stay to be seen, and no command judges so.
    judged.report.trial = *seen->trial;
    judged.report.judged_again_by.clear();
  }
  return judged;
}

// From the fit that is at hand, or that is made in its turn.
base::ResultOrProblems<FitAtHand> fit_in_turn(const FitWanted& wanted,
                                              FitsAtHand& fits,
                                              const JudgeOptions& options,
                                              const base::Executor& executor,
                                              const base::ProgressReport& progress) {
  const FitsAtHand::Turn turn(fits, wanted, [&progress] {
    return progress({.stage = "waiting for the same to be worked out"});
  });
  if (!turn.is_mine()) return stopped_judging();
  if (auto fit = fits.find(wanted)) return std::move(*fit);
  if (!progress({.stage = "fitting the curves"})) return stopped_judging();
  auto fit = fit_now(wanted, options, executor, progress);
  if (fit) fits.keep(*fit);
  return fit;
}

base::ResultOrProblems<wire::Judged> judged_by(Engine engine,
                                               AtHand& at_hand,
                                               const TrialToJudge& asked,
                                               const Seen& seen,
                                               const base::Executor& executor,
                                               const base::ProgressReport& progress) {
  auto fit = fit_in_turn(fit_for(asked, seen, engine),
                         at_hand.fits,
                         options_for(asked.question, *seen),
                         executor,
                         step_of(progress, 0, steps_end(engine).fitted));
  if (!fit) return tl::unexpected<Problems>(std::move(fit.error()));
  return judged_from(at_hand, asked, seen, std::move(*fit), progress);
}

}  // namespace

bool is_long_to_judge(const trials::Trial& trial) {
  return trial.runs.size() > kMostRunsJudgedAtOnce;
}

base::ResultOrProblems<wire::Judged> judge_quickly(AtHand& at_hand,
                                                   const TrialToJudge& asked,
                                                   const base::ProgressReport& progress) {
  const auto seen = at_hand.trials.trial(asked.notebook, asked.uid);
  if (!seen) return base::failed_by(seen.error());
  return judged_by(Engine::quick, at_hand, asked, *seen, base::one_thread(), progress);
}

base::ResultOrProblems<std::optional<wire::Judged>> judge_again(AtHand& at_hand,
                                                                const TrialToJudge& asked) {
  using Again = std::optional<wire::Judged>;
  const auto seen = at_hand.trials.trial(asked.notebook, asked.uid);
  if (!seen) return base::failed_by(seen.error());
  auto fit = at_hand.fits.find(fit_for(asked, *seen, Engine::full));
  if (!fit) return Again();
  auto judged = judged_from(at_hand, asked, *seen, std::move(*fit), base::unwatched());
  if (!judged) return tl::unexpected<Problems>(std::move(judged.error()));
  return Again(std::move(*judged));
}

base::ResultOrProblems<wire::Judged> judge_fully(AtHand& at_hand,
                                                 const TrialToJudge& asked,
                                                 const base::Executor& executor,
                                                 const base::ProgressReport& progress) {
  const auto seen = at_hand.trials.checked_trial(asked.notebook, asked.uid);
  if (!seen) return base::failed_by(seen.error());
  return judged_by(Engine::full, at_hand, asked, *seen, executor, progress);
}

}  // namespace keenfall::workbench
