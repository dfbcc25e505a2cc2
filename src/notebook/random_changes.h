// For tests: what a person may do to a notebook, step by step, and all that can be seen of one. A
// seed and the notebook before say what is done, so that it can be done again and compared.
#pragma once

#include "notebook/notebook.h"
#include "notebook/plans.h"
#include "trials/kit.h"
#include "trials/trial.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace keenfall::notebook::testing {

struct NotebookState {
  std::vector<JournalEntry> journal;
  std::vector<trials::Trial> trials;
  std::vector<std::optional<KeptPlan>> plans;  // as trials
  trials::Kit kit;

  bool operator==(const NotebookState&) const = default;
};

[[nodiscard]] NotebookState state_of(const Notebook& notebook);

[[nodiscard]] Authorship authorship(const std::string& client_id);

// Takes a trial in, lets one grow, strikes, plans, seals, changes the kit or undoes; whether
// anything was written.
bool change_something(Notebook& notebook, std::mt19937& random, const Authorship& by);

// Open or closed; a step is refused by a thrown sentence.
struct Bench {
  std::string path;
  std::optional<Notebook> notebook;
};
using Step = std::function<void(Bench&)>;

// Make, take, let grow, strike, undo, close, open, take, undo, plan, seal, put into the kit, close.
[[nodiscard]] std::vector<Step> scripted_steps();
// Make, then changes, closings and openings at random.
[[nodiscard]] std::vector<Step> random_steps(unsigned seed, std::size_t count);

struct Course {
  std::size_t steps_done = 0;
  std::string refusal;  // of the step after those
};
// Until one is refused. `after`, where given, is called after each that was not.
Course run_steps(Bench& bench,
                 const std::vector<Step>& steps,
                 const std::function<void(const Bench&)>& after = {});

}  // namespace keenfall::notebook::testing
