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
                                                 FitAtHand fit) {
  JudgeOptions options = options_for(asked.question, *seen);
  options.told_in = asked.told_in;
  auto judgements = judge_fitted(*fit.fitted, options);
  if (!judgements) return tl::unexpected<Problems>(std::move(judgements.error()));
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

base::Problem stopped_while_waiting() {
  return {.kind = base::ProblemKind::interrupted,
          .sentence = "Stopped while the same was being worked out; nothing was kept."};
}

}  // namespace

bool is_long_to_judge(const trials::Trial& trial) {
  return trial.runs.size() > kMostRunsJudgedAtOnce;
}

base::ResultOrProblems<wire::Judged> judge_quickly(AtHand& at_hand, const TrialToJudge& asked) {
  const auto seen = at_hand.trials.trial(asked.notebook, asked.uid);
  if (!seen) return base::failed_by(seen.error());
  const FitWanted wanted = fit_for(asked, *seen, Engine::quick);
  if (auto fit = at_hand.fits.find(wanted)) {
    return judged_from(at_hand, asked, *seen, std::move(*fit));
  }
  auto fit =
      fit_now(wanted, options_for(asked.question, **seen), base::one_thread(), base::unwatched());
  if (!fit) return tl::unexpected<Problems>(std::move(fit.error()));
  at_hand.fits.keep(*fit);
  return judged_from(at_hand, asked, *seen, std::move(*fit));
}

base::ResultOrProblems<std::optional<wire::Judged>> judge_again(AtHand& at_hand,
                                                                const TrialToJudge& asked) {
  using Again = std::optional<wire::Judged>;
  const auto seen = at_hand.trials.trial(asked.notebook, asked.uid);
  if (!seen) return base::failed_by(seen.error());
  auto fit = at_hand.fits.find(fit_for(asked, *seen, Engine::full));
  if (!fit) return Again();
  auto judged = judged_from(at_hand, asked, *seen, std::move(*fit));
  if (!judged) return tl::unexpected<Problems>(std::move(judged.error()));
  return Again(std::move(*judged));
}

base::ResultOrProblems<wire::Judged> judge_fully(AtHand& at_hand,
                                                 const TrialToJudge& asked,
                                                 const base::Executor& executor,
                                                 const base::ProgressReport& progress) {
  const auto seen = at_hand.trials.checked_trial(asked.notebook, asked.uid);
  if (!seen) return base::failed_by(seen.error());
  const FitWanted wanted = fit_for(asked, *seen, Engine::full);
  const FitsAtHand::Turn turn(at_hand.fits, wanted, [&progress] {
    return progress({.stage = "waiting for the same to be worked out"});
  });
  if (!turn.is_mine()) return base::failed_by(stopped_while_waiting());
  if (auto fit = at_hand.fits.find(wanted)) {
    return judged_from(at_hand, asked, *seen, std::move(*fit));
  }
  auto fit = fit_now(wanted, options_for(asked.question, **seen), executor, progress);
  if (!fit) return tl::unexpected<Problems>(std::move(fit.error()));
  at_hand.fits.keep(*fit);
  return judged_from(at_hand, asked, *seen, std::move(*fit));
}

}  // namespace keenfall::workbench
