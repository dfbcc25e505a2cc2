#include "notebook/random_changes.h"

#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "notebook/made_notebook.h"
#include "notebook/notebook_failure.h"
#include "notebook/plans.h"
#include "notebook/strike.h"

#include <stdexcept>
#include <utility>

namespace keenfall::notebook::testing {

namespace {

class Refused : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

template <class Value>
Value accepted(base::Result<Value> result) {
  if (!result) throw Refused(result.error().sentence);
  return std::move(*result);
}

trials::Trial trial_called(const std::string& name) {
  trials::Trial trial = a_trial();
  trial.name = name;
  return trial;
}

// Its runs read on, by as many readings as it has `longer`.
trials::Trial grown(trials::Trial trial, int longer) {
  for (trials::Run& run : trial.runs) {
    const trials::Reading last = run.readings.back();
    for (int i = 1; i <= longer; ++i) {
      run.readings.push_back({.cuts = last.cuts + 5.0 * i, .reading = last.reading + 3 * i});
    }
  }
  return trial;
}

bool take_as(Notebook& notebook, const trials::Trial& trial, int table, const Authorship& by) {
  const std::string number = std::to_string(table);
  const auto taken = take(notebook,
                          trial,
                          {{"t" + number + ".csv", std::string(64 - number.size(), 'a') + number}},
                          by);
  return taken && taken->entry;  // the same once more writes nothing
}

bool strike_something(Notebook& notebook, std::mt19937& random, const Authorship& by) {
  const auto trials = kept_trials(notebook);
  if (trials.empty()) return false;
  StrikeRequest request{.trial = trials[random() % trials.size()].name,
                        .blade = random() % 2 == 0 ? "A" : "B",
                        .run = "1",
                        .reason = "slipped"};
  if (random() % 8 != 0) request.cuts = 5.0 * static_cast<double>(random() % 4);
  return strike(notebook, request, by).has_value();
}

bool grow_something(Notebook& notebook, std::mt19937& random, const Authorship& by) {
  const auto trials = kept_trials(notebook);
  if (trials.empty()) return false;
  const std::string name = trials[random() % trials.size()].name;
  trials::Trial longer = *kept_trial(notebook, name);
  if (longer.runs.empty()) {  // planned only, so that it is cut now
    trials::Trial first = trial_called(name);
    first.counted = longer.counted;
    longer = std::move(first);
  } else if (random() % 3 == 0) {
    longer.runs.push_back(a_trial().runs[random() % 2]);
    longer.runs.back().name = std::to_string(longer.runs.size());
  } else {
    longer = grown(std::move(longer), 1 + static_cast<int>(random() % 5));
  }
  return take_as(notebook, longer, static_cast<int>(random() % 1000000), by);
}

// Its blades are in the kit once a trial was taken in.
bool plan_something(Notebook& notebook, std::mt19937& random, const Authorship& by) {
  const auto trials = kept_trials(notebook);
  if (random() % 3 == 0 || trials.empty()) {
    return make_trial(notebook, "plan " + std::to_string(random() % 100), what_is_asked(), by)
        .has_value();
  }
  const std::string name = trials[random() % trials.size()].name;
  if (random() % 3 == 0) return seal(notebook, name, by).has_value();
  Asked asked = what_is_asked();
  asked.plan.counted = kept_trial(notebook, name)->counted;
  asked.plan.runs_each = 1 + static_cast<int>(random() % 5);
  asked.plan.arms.resize(1 + random() % 2);
  asked.plan.runs.clear();
  const auto changed = change_asked(notebook, name, asked, by);
  return changed && *changed;
}

bool change_the_kit(Notebook& notebook, std::mt19937& random, const Authorship& by) {
  const std::vector<KitThing> things = a_kit();
  const KeptKit kit = kept_kit(notebook);
  if (kit.stones.empty() || random() % 2 == 0) {
    return add_to_kit(notebook, things[random() % things.size()], by).has_value();
  }
  if (random() % 2 == 0) return take_from_kit(notebook, kit.stones[0].uid, by).has_value();
  trials::KitStone stone = kit.stones[0].thing;
  stone.note = std::to_string(random() % 1000);
  const auto changed = change_in_kit(notebook, kit.stones[0].uid, stone, by);
  return changed && *changed;
}

bool undo_something(Notebook& notebook, std::mt19937& random, const Authorship& by) {
  const auto entries = notebook.journal().size();
  if (entries == 0) return false;
  return notebook.undo(1 + static_cast<std::int64_t>(random() % entries), by).has_value();
}

void make(Bench& bench) {
  bench.notebook.emplace(accepted(Notebook::create(
      bench.path, {.uid = "00112233445566778899aabbccddeeff", .made_by = "test"}, kOpener)));
}

void open_again(Bench& bench) {
  bench.notebook.emplace(accepted(Notebook::open_to_write(bench.path, kOpener)));
}

void close_it(Bench& bench) { bench.notebook.reset(); }

Step taking(const trials::Trial& trial, int table) {
  return [=](Bench& bench) {
    const auto by = authorship("take " + std::to_string(table));
    if (!take_as(*bench.notebook, trial, table, by)) throw Refused("it was not taken");
  };
}

}  // namespace

NotebookState state_of(const Notebook& notebook) {
  NotebookState state{.journal = notebook.journal()};
  for (const KeptTrial& kept : kept_trials(notebook)) {
    state.trials.push_back(accepted(kept_trial(notebook, kept.name)));
    state.plans.push_back(kept_plan(notebook, kept.name));
  }
  state.kit = things_of(kept_kit(notebook));
  return state;
}

Authorship authorship(const std::string& client_id) {
  return {.client_id = client_id, .at_utc = "2026-11-26T12:00:00Z", .who = "R."};
}

bool change_something(Notebook& notebook, std::mt19937& random, const Authorship& by) {
  switch (random() % 7) {
    case 0:
    case 1: {
      const int number = static_cast<int>(random() % 1000000);
      return take_as(notebook, trial_called("trial " + std::to_string(number)), number, by);
    }
    case 2:
      return grow_something(notebook, random, by);
    case 3:
      return strike_something(notebook, random, by);
    case 4:
      return plan_something(notebook, random, by);
    case 5:
      return change_the_kit(notebook, random, by);
    default:
      return undo_something(notebook, random, by);
  }
}

std::vector<Step> scripted_steps() {
  const trials::Trial trial = a_trial();
  return {
      make,
      taking(trial, 1),
      taking(grown(trial, 3), 2),
      [](Bench& bench) {
        accepted(
            strike(*bench.notebook,
                   {.trial = "matting", .blade = "B", .run = "1", .cuts = 15, .reason = "slipped"},
                   authorship("strike")));
      },
      [](Bench& bench) { accepted(bench.notebook->undo(3, authorship("undo"))); },
      close_it,
      open_again,
      taking(trial_called("rope"), 3),
      [](Bench& bench) { accepted(bench.notebook->undo(5, authorship("undo rope"))); },
      [](Bench& bench) {
        accepted(make_trial(*bench.notebook, "felt", what_is_asked(), authorship("plan")));
      },
      [](Bench& bench) { accepted(seal(*bench.notebook, "felt", authorship("seal"))); },
      [](Bench& bench) { accepted(add_to_kit(*bench.notebook, a_kit()[0], authorship("put"))); },
      close_it};
}

std::vector<Step> random_steps(unsigned seed, std::size_t count) {
  std::vector<Step> steps = {make};
  for (std::size_t i = 0; i < count; ++i) {
    const auto step_seed = 1000 * seed + static_cast<unsigned>(i);
    steps.emplace_back([=](Bench& bench) {
      std::mt19937 random(step_seed);
      if (!bench.notebook) {
        open_again(bench);
      } else if (random() % 6 == 0) {
        close_it(bench);
      } else {
        change_something(*bench.notebook, random, authorship("step " + std::to_string(i)));
      }
    });
  }
  return steps;
}

Course run_steps(Bench& bench,
                 const std::vector<Step>& steps,
                 const std::function<void(const Bench&)>& after) {
  Course course;
  try {
    for (const Step& step : steps) {
      step(bench);
      ++course.steps_done;
      if (after) after(bench);
    }
  } catch (const NotebookFailure& failure) {
    course.refusal = failure.what();
  } catch (const Refused& refused) {
    course.refusal = refused.what();
  }
  return course;
}

}  // namespace keenfall::notebook::testing
