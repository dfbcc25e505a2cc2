#include "workbench/trials_at_hand.h"

#include "notebook/kept_trials.h"
#include "wire/judgement_json.h"
#include "workbench/counted_look.h"
#include "workbench/notebook_opening.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <utility>

namespace keenfall::workbench {

namespace {

using Found = base::Result<std::shared_ptr<const TrialAtHand>>;

constexpr std::size_t kMostReadingsKept = 500'000;  // some 100 MB
// Of one trial, as it was before: what was changed and undone is known again.
constexpr std::ptrdiff_t kMostVersionsKept = 4;

std::size_t readings_of(const TrialAtHand& one) {
  std::size_t readings = 0;
  for (const trials::Run& run : one.trial->runs) readings += run.readings.size();
  return readings;
}

// Of what stands in the notebook now; `before`: what was read of it before, the newest first.
TrialAtHand read_from(const notebook::Notebook& opened,
                      const std::string& uid,
                      trials::Trial trial,
                      const std::vector<std::shared_ptr<const TrialAtHand>>& before) {
  TrialAtHand read{.notebook = opened.path(), .uid = uid, .place = opened.last_place()};
  const auto as_it_was =
      std::ranges::find_if(before, [&trial](const auto& one) { return *one->trial == trial; });
  if (as_it_was != before.end()) {
    read.trial = (*as_it_was)->trial;
    read.inputs = (*as_it_was)->inputs;
  } else {
    read.trial = std::make_shared<const trials::Trial>(std::move(trial));
    read.inputs = inputs_of(*read.trial);
  }
  read.asked = notebook::kept_plan(opened, read.trial->name);
  for (const notebook::Look& look : notebook::looks_at(opened, read.trial->name)) {
    read.looks.push_back({.at_utc = look.at_utc,
                          .who = look.who,
                          .question = look.judgement.question,
                          .inputs = look.judgement.inputs,
                          .headline = wire::headline_in(look.judgement.answer)});
  }
  return read;
}

}  // namespace

base::Problem no_trial_with(const std::string& uid, const std::string& path) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "The notebook has no such trial, or not any more.",
          .place = {.file = path, .found = uid},
          .accepted = "a trial that the first page lists"};
}

std::shared_ptr<const TrialAtHand> TrialsAtHand::known(const std::string& path,
                                                       const std::string& uid) {
  const std::lock_guard lock(mutex_);
  const auto found = std::ranges::find_if(
      kept_, [&](const auto& one) { return one->notebook == path && one->uid == uid; });
  if (found == kept_.end()) return nullptr;
  kept_.splice(kept_.begin(), kept_, found);
  return kept_.front();
}

std::vector<std::shared_ptr<const TrialAtHand>> TrialsAtHand::versions(const std::string& path,
                                                                       const std::string& uid) {
  const std::lock_guard lock(mutex_);
  std::vector<std::shared_ptr<const TrialAtHand>> all;
  std::ranges::copy_if(kept_, std::back_inserter(all), [&](const auto& one) {
    return one->notebook == path && one->uid == uid;
  });
  return all;
}

void TrialsAtHand::keep(std::shared_ptr<const TrialAtHand> read) {
  const std::lock_guard lock(mutex_);
  std::ptrdiff_t versions = 1;
  std::erase_if(kept_, [&](const auto& one) {
    if (one->notebook != read->notebook || one->uid != read->uid) return false;
    return one->trial == read->trial || ++versions > kMostVersionsKept;
  });
  kept_.push_front(std::move(read));
  // The newest stays, however large it is.
  std::size_t readings = readings_of(*kept_.front());
  const auto too_many = std::find_if(std::next(kept_.begin()), kept_.end(), [&](const auto& one) {
    readings += readings_of(*one);
    return readings > kMostReadingsKept;
  });
  kept_.erase(too_many, kept_.end());
}

Found TrialsAtHand::trial_of(const notebook::Notebook& opened, const std::string& uid) {
  const notebook::OneMoment moment(opened);
  const auto before = known(opened.path(), uid);
  if (before && before->place == opened.last_place()) return before;
  const std::optional<std::string> name = notebook::trial_name_of(opened, uid);
  if (!name) return base::failed(no_trial_with(uid, opened.path()));
  auto trial = notebook::kept_trial(opened, *name);
  if (!trial) return base::failed(trial.error());
  auto read = std::make_shared<const TrialAtHand>(
      read_from(opened, uid, std::move(*trial), versions(opened.path(), uid)));
  keep(read);
  return read;
}

Found TrialsAtHand::trial(const std::string& path, const std::string& uid) {
  return naming_the_file(path, [&]() -> Found {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    return trial_of(*opened, uid);
  });
}

Found TrialsAtHand::checked_trial(const std::string& path, const std::string& uid) {
  return naming_the_file(path, [&]() -> Found {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    refuse_damage(*opened);
    return trial_of(*opened, uid);
  });
}

}  // namespace keenfall::workbench
