#include "workbench/app_home.h"

#include "notebook/kept_trials.h"
#include "telling/headline.h"
#include "workbench/notebook_opening.h"
#include "workbench/own_question.h"
#include "workbench/trial_path.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

wire::Answer answer_in(std::vector<telling::Sentence> headline) {
  wire::Answer answer{.sentence = std::move(headline.front())};
  if (headline.size() > 1) answer.more = std::move(headline[1]);
  return answer;
}

std::optional<wire::Answer> stored_answer(const TrialAtHand& trial) {
  const LookAtHand* look = newest_own_look(trial);
  if (look == nullptr || look->headline.empty()) return std::nullopt;
  wire::Answer answer = answer_in(look->headline);
  answer.of_now = look->inputs == trial.inputs;
  answer.judged_at_utc = look->at_utc;
  return answer;
}

wire::TrialCard card_of(const TrialAtHand& trial, const notebook::KeptTrial& kept) {
  wire::TrialCard card{.uid = kept.uid,
                       .name = kept.name,
                       .runs = kept.runs,
                       .readings = kept.readings,
                       .path = path_of(trial),
                       .answer = stored_answer(trial)};
  if (trial.asked && !trial.asked->claims.empty()) card.claim = trial.asked->claims.front().words;
  return card;
}

std::optional<wire::Undoable> undoable_in(const notebook::Notebook& opened,
                                          const std::vector<notebook::JournalEntry>& journal) {
  const auto entry = opened.last_to_undo();
  if (!entry) return std::nullopt;
  const auto found = std::ranges::find(journal, *entry, &notebook::JournalEntry::entry);
  return wire::Undoable{.entry = *entry, .what = found->what};
}

}  // namespace

wire::Path path_of(const TrialAtHand& trial) {
  TrialStanding standing{.runs = trial.trial->runs.size()};
  if (trial.asked) {
    standing.is_claimed = !trial.asked->claims.empty();
    standing.is_planned = !trial.asked->plan.arms.empty();
    standing.is_sealed = trial.asked->sealed_at_utc.has_value();
    standing.runs_read_before = trial.asked->runs_read_before;
  }
  if (const LookAtHand* look = newest_own_look(trial)) {
    standing.is_judged = true;
    standing.judged_as_is = look->inputs == trial.inputs;
    standing.judged_on = look->at_utc.substr(0, look->at_utc.find('T'));
  }
  return path_of(standing);
}

base::Result<wire::Home> home_of(AtHand& at_hand, const std::string& notebook) {
  return naming_the_file(notebook, [&]() -> base::Result<wire::Home> {
    const auto opened = opened_to_read(notebook);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    wire::Home home{.name = std::filesystem::path(notebook).filename().string()};
    for (const notebook::KeptTrial& kept : notebook::kept_trials(*opened)) {
      const auto trial = at_hand.trials.trial_of(*opened, kept.uid);
      if (!trial) return base::failed(trial.error());
      home.trials.push_back(card_of(**trial, kept));
    }
    std::ranges::reverse(home.trials);
    home.last_entry = opened->last_place().entry;
    home.undoes = undoable_in(*opened, opened->journal());
    return home;
  });
}

base::ResultOrProblems<wire::Answer> newest_answer(AtHand& at_hand, const TrialToJudge& asked) {
  const auto seen = at_hand.trials.trial(asked.notebook, asked.uid);
  if (!seen) return base::failed_by(seen.error());
  auto stored = stored_answer(**seen);
  if (stored && (stored->of_now || is_long_to_judge(*(*seen)->trial))) return std::move(*stored);
  if (is_long_to_judge(*(*seen)->trial)) {
    const std::string runs = std::to_string((*seen)->trial->runs.size());
    return wire::Answer{
        .sentence = telling::plain("Not judged yet: " + runs +
                                   " runs take a while, which Judge shows as it goes on."),
        .is_judged = false};
  }
  auto judged = judge_quickly(at_hand, asked, base::unwatched());
  if (!judged) return tl::unexpected<std::vector<base::Problem>>(std::move(judged.error()));
  std::vector<verdicts::Judgement> judgements;
  for (telling::ReportedJudgement& reported : judged->report.judgements) {
    judgements.push_back(std::move(reported.judgement));
  }
  return answer_in(telling::headline(judgements));
}

}  // namespace keenfall::workbench
