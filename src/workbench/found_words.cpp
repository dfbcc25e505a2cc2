#include "workbench/found_words.h"

#include "materials/spelling.h"
#include "notebook/kept_trials.h"
#include "notebook/trial_words.h"
#include "workbench/notebook_opening.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <utility>

namespace keenfall::workbench {

namespace {

constexpr std::size_t kMostFound = 100;

bool is_hexadecimal(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); }

// The digits of a digest say nothing that anybody looks for: "e0" is not in it.
std::string without_digests(const std::string& words) {
  constexpr std::ptrdiff_t kLongestWord = 15;
  std::string said;
  for (auto at = words.begin(); at != words.end();) {
    const auto end = std::find_if_not(at, words.end(), is_hexadecimal);
    if (end - at <= kLongestWord) said.append(at, end);
    at = end;
    if (at != words.end()) said += *at++;
  }
  return said;
}

// Gathers what holds all the words, each kind and words once.
class Finder {
 public:
  explicit Finder(const std::string& text) {
    std::istringstream words(materials::lower_case(text));
    for (std::string word; words >> word;) wanted_.push_back(std::move(word));
  }

  // Whose runs and notes are looked at from now on.
  void go_into(const std::string& trial) { trial_ = trial; }

  void look_at(const std::string& kind, const std::string& words, const std::string& path) {
    const std::string said = materials::lower_case(without_digests(words));
    const bool has_all = std::ranges::all_of(
        wanted_, [&said](const std::string& word) { return said.find(word) != std::string::npos; });
    if (!has_all || !seen_.insert({kind, words + path}).second) return;
    const bool begins = said.starts_with(wanted_.front());
    (begins ? begins_ : holds_)
        .push_back({.kind = kind, .words = words, .trial = trial_, .path = path});
  }

  // What came first of each nearness stands first in it.
  [[nodiscard]] std::vector<wire::FoundPlace> found() && {
    std::ranges::move(holds_, std::back_inserter(begins_));
    if (begins_.size() > kMostFound) begins_.resize(kMostFound);
    return std::move(begins_);
  }

 private:
  std::vector<std::string> wanted_;  // at least one
  std::string trial_;
  std::set<std::pair<std::string, std::string>> seen_;
  std::vector<wire::FoundPlace> begins_;
  std::vector<wire::FoundPlace> holds_;
};

void look_at_run(Finder& finder, const trials::Run& run, const std::string& page) {
  finder.look_at("run", notebook::words_of(run), page);
  for (const std::string& note : run.notes) finder.look_at("note", note, page);
  for (const std::string& deviation : run.deviations) finder.look_at("note", deviation, page);
  for (const trials::Event& event : run.events) finder.look_at("note", event.as_written, page);
  if (run.voided_reason) finder.look_at("note", *run.voided_reason, page);
  for (const trials::Reading& reading : run.readings) {
    if (reading.struck_reason) finder.look_at("note", *reading.struck_reason, page);
    if (reading.doubtful_reason) finder.look_at("note", *reading.doubtful_reason, page);
  }
}

void look_at_trial(Finder& finder, const TrialAtHand& trial) {
  const std::string page = "/trials/" + trial.uid + "/judge";
  for (const trials::Blade& blade : trial.trial->blades) {
    finder.look_at("blade", blade.name, page);
    if (!blade.steel.empty()) finder.look_at("blade", blade.name + " of " + blade.steel, page);
  }
  for (const trials::Run& run : trial.trial->runs) {
    finder.look_at("medium", run.arm.medium.name, page);
    if (!run.medium_lot.empty()) finder.look_at("medium", run.medium_lot, page);
  }
  for (const trials::Run& run : trial.trial->runs) look_at_run(finder, run, page);
  if (!trial.asked) return;
  for (const trials::Claim& claim : trial.asked->claims) {
    finder.look_at("note", claim.words, "/trials/" + trial.uid + "/ask");
  }
}

bool is_blank_text(const std::string& text) {
  return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

}  // namespace

base::Result<std::vector<wire::FoundPlace>> found_words(AtHand& at_hand,
                                                        const std::string& notebook,
                                                        const std::string& text) {
  using Outcome = base::Result<std::vector<wire::FoundPlace>>;
  return naming_the_file(notebook, [&]() -> Outcome {
    const auto opened = opened_to_read(notebook);
    if (!opened) return base::failed(opened.error());
    if (is_blank_text(text)) return std::vector<wire::FoundPlace>();
    const notebook::OneMoment moment(*opened);
    Finder finder(text);
    const auto kept = notebook::kept_trials(*opened);
    for (const notebook::KeptTrial& trial : kept) {
      finder.look_at("trial", trial.name, "/trials/" + trial.uid + "/judge");
    }
    for (const notebook::KeptTrial& trial : kept) {
      const auto read = at_hand.trials.trial_of(*opened, trial.uid);
      if (!read) return base::failed(read.error());
      finder.go_into(trial.name);
      look_at_trial(finder, **read);
    }
    finder.go_into({});
    for (const notebook::JournalEntry& entry : opened->journal()) {
      finder.look_at("entry", entry.what, "/journal");
      if (!entry.why.empty()) finder.look_at("entry", entry.why, "/journal");
    }
    return std::move(finder).found();
  });
}

}  // namespace keenfall::workbench
