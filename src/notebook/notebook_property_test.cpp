// What holds of every notebook, whatever was done with it.
#include "notebook/any_trial_test.h"
#include "notebook/check.h"
#include "notebook/content_in_words_test.h"
#include "notebook/kit.h"
#include "notebook/looks.h"
#include "notebook/made_notebook.h"
#include "notebook/merge.h"
#include "notebook/plans.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::any_trial;
using testing::content_in_words;
using testing::kOpener;
using testing::ScratchFolder;

// A folder with notebooks in it, and changes by numbered client ids.
struct Desk {
  ScratchFolder folder{"properties", testing::quick_place()};
  int changes = 0;

  [[nodiscard]] Notebook new_notebook(const std::string& name) const {
    return std::move(
        *Notebook::create(folder.file(name), {.uid = name, .made_by = "test"}, kOpener));
  }
  Authorship by() {
    return {.client_id = "c" + std::to_string(++changes),
            .at_utc = "2026-11-26T12:00:00Z",
            .who = "R."};
  }
};

void take_something(Notebook& notebook, Desk& desk) {
  const std::string name = *rc::gen::element<std::string>("spring", "summer", "autumn \"wet\"");
  (void)take(notebook, any_trial(name), {}, desk.by());  // refused where it contradicts
}

void grow_something(Notebook& notebook, Desk& desk) {
  const auto kept = kept_trials(notebook);
  if (kept.empty()) return;
  auto trial = *kept_trial(notebook, (*rc::gen::elementOf(kept)).name);
  for (trials::Run& run : trial.runs) {
    if (run.readings.empty()) continue;
    const auto place = *rc::gen::inRange<std::size_t>(0, run.readings.size() + 1);
    trials::Reading reading = run.readings.front();
    reading.reading = *testing::any_number();
    reading.struck_reason.reset();
    run.readings.insert(run.readings.begin() + static_cast<std::ptrdiff_t>(place), reading);
  }
  (void)take(notebook, trial, {}, desk.by());
}

void strike_something(Notebook& notebook, Desk& desk) {
  for (const KeptTrial& kept : kept_trials(notebook)) {
    const trials::Trial trial = *kept_trial(notebook, kept.name);
    for (const trials::Run& run : trial.runs) {
      if (*rc::gen::inRange(0, 3) != 0) continue;
      StrikeRequest request{.trial = kept.name,
                            .blade = run.arm.blade,
                            .medium = run.arm.medium.name,
                            .run = run.name,
                            .reason = *testing::any_words()};
      if (!run.readings.empty() && *rc::gen::arbitrary<bool>()) {
        request.cuts = run.readings.front().cuts;
      }
      (void)strike(notebook, request, desk.by());
    }
  }
}

void look_at_something(Notebook& notebook, Desk& desk) {
  const auto kept = kept_trials(notebook);
  if (kept.empty()) return;
  ASSERT_TRUE(count_look(notebook,
                         (*rc::gen::elementOf(kept)).name,
                         {.inputs = {.sha256 = std::string(64, *rc::gen::element('a', 'b'))},
                          .program_version = "0.1.0",
                          .answer = "{}"},
                         desk.by()));
}

// Of blades that are in the kit; a draft, at random.
Asked any_question(const Notebook& notebook) {
  Asked asked{.claims = {{.words = *testing::any_words(), .worth_it_margin = 1.5}}};
  trials::Plan& plan = asked.plan;
  plan.runs_each = *rc::gen::inRange(1, 4);
  for (int i = *rc::gen::inRange(0, 3); i > 0; --i) {
    plan.cuttings.push_back(
        {.medium = {.name = *rc::gen::element<std::string>("felt", "rope \"hard\"")},
         .lot = *testing::any_words(),
         .checkpoint_cuts = {0, 1.0 + *testing::any_number()}});
  }
  for (const auto& blade : kept_kit(notebook).blades) {
    if (plan.cuttings.empty() || *rc::gen::arbitrary<bool>()) continue;
    plan.arms.push_back({.blade = blade.thing.name,
                         .cutting = *rc::gen::inRange<std::size_t>(0, plan.cuttings.size())});
    plan.runs.push_back({.arm = plan.arms.size() - 1});
    if (*rc::gen::inRange(0, 3) == 0) plan.house_blade = blade.thing.name;
  }
  return asked;
}

void plan_something(Notebook& notebook, Desk& desk) {
  const std::string name = *rc::gen::element<std::string>("spring", "summer", "winter");
  (void)make_trial(notebook, name, any_question(notebook), desk.by());
  if (*rc::gen::arbitrary<bool>()) {
    (void)change_asked(notebook, name, any_question(notebook), desk.by());
  }
  if (*rc::gen::inRange(0, 3) == 0) (void)seal(notebook, name, desk.by());
  if (*rc::gen::inRange(0, 4) == 0) (void)rename_trial(notebook, name, "winter", desk.by());
}

// Names are few, so that one takes another's.
void change_the_kit(Notebook& notebook, Desk& desk) {
  const std::string name = *rc::gen::element<std::string>("A", "D", "E");
  const trials::Medium medium{.name = *rc::gen::element<std::string>("felt", "cork"),
                              .condition = *rc::gen::element<std::string>("", "wet")};
  const std::vector<KitThing> things = {
      trials::Blade{.name = name,
                    .specimens = {{.name = *rc::gen::element<std::string>("i", "iii")}}},
      trials::NamedEdge{.name = name, .note = *testing::any_words()},
      medium,
      trials::MediumLot{.medium = medium, .name = name},
      trials::Thread{.kind = "thread_push", .name = name},
      trials::KitStone{.name = name, .note = *testing::any_words()}};
  const KitThing thing = *rc::gen::elementOf(things);
  (void)add_to_kit(notebook, thing, desk.by());
  const KeptKit kit = kept_kit(notebook);
  std::vector<std::string> uids;
  for (const auto& blade : kit.blades) uids.push_back(blade.uid);
  for (const auto& one : kit.media) uids.push_back(one.uid);
  for (const auto& lot : kit.lots) uids.push_back(lot.uid);
  for (const auto& edge : kit.edges) uids.push_back(edge.uid);
  Authorship by = desk.by();
  by.why = "read off the wrong box";
  if (uids.empty()) return;
  (void)change_in_kit(notebook, *rc::gen::elementOf(uids), thing, by);
  if (*rc::gen::arbitrary<bool>()) {
    (void)take_from_kit(notebook, *rc::gen::elementOf(uids), desk.by());
  }
}

void undo_something(Notebook& notebook, Desk& desk) {
  const auto entries = static_cast<std::int64_t>(notebook.journal().size());
  if (entries > 0) (void)notebook.undo(*rc::gen::inRange<std::int64_t>(1, entries + 1), desk.by());
}

void do_something(Notebook& notebook, Desk& desk, int times) {
  for (; times > 0; --times) {
    switch (*rc::gen::inRange(0, 8)) {
      case 0:
      case 1:
        take_something(notebook, desk);
        break;
      case 2:
        grow_something(notebook, desk);
        break;
      case 3:
        strike_something(notebook, desk);
        break;
      case 4:
        look_at_something(notebook, desk);
        break;
      case 5:
        plan_something(notebook, desk);
        break;
      case 6:
        change_the_kit(notebook, desk);
        break;
      default:
        undo_something(notebook, desk);
    }
    RC_ASSERT(check(notebook) == std::vector<std::string>());
  }
}

// Whatever the reasons, and whichever came first: what was read in which run, struck out or not.
std::vector<std::string> readings_in_words(const Notebook& notebook) {
  std::vector<std::string> words;
  for (const KeptTrial& kept : kept_trials(notebook)) {
    const trials::Trial trial = *kept_trial(notebook, kept.name);
    for (const trials::Run& run : trial.runs) {
      const std::string whose = kept.name + "|" + run.arm.blade + "|" + run.arm.medium.name + "|" +
                                run.arm.medium.condition + "|" + run.name +
                                (run.voided_reason ? "|void|" : "|");
      words.push_back(whose);
      for (const trials::Reading& reading : run.readings) {
        words.push_back(whose + std::to_string(reading.series) + "|" +
                        std::to_string(reading.cuts) + "|" + std::to_string(reading.reading) + "|" +
                        reading.station + (reading.struck_reason ? "|struck" : ""));
      }
    }
  }
  std::ranges::sort(words);
  return words;
}

const std::vector<std::string> kLooks = {"look", "stored_judgement"};

// A sealing holds as long as there are readings that came in after it.
std::optional<std::int64_t> undo_the_last_that_can_be(Notebook& notebook, Desk& desk) {
  std::vector<JournalEntry> journal = notebook.journal();
  std::ranges::reverse(journal);
  for (const JournalEntry& entry : journal) {
    if (entry.undoes || entry.undone_by) continue;
    const auto undone = notebook.undo(entry.entry, desk.by());
    if (undone) return undone->entry;
  }
  return std::nullopt;
}

// Why what still holds is not undone, a sentence for each entry. Looks stay.
std::vector<std::string> why_the_rest_stays(Notebook& notebook, Desk& desk) {
  std::vector<std::string> sentences;
  for (const JournalEntry& entry : notebook.journal()) {
    if (entry.undoes || entry.undone_by || entry.what.starts_with("look at ")) continue;
    const auto undone = notebook.undo(entry.entry, desk.by());
    sentences.push_back(undone ? "undone after all: " + entry.what : undone.error().sentence);
  }
  return sentences;
}

RC_GTEST_PROP(EveryNotebook, IsEmptyWhenAllIsUndoneAndAsBeforeWhenAllIsRedone, ()) {
  Desk desk;
  Notebook notebook = desk.new_notebook("a.keen");
  do_something(notebook, desk, *rc::gen::inRange(1, 8));
  const auto before = content_in_words(notebook);

  std::vector<std::int64_t> undoings;
  while (const auto undoing = undo_the_last_that_can_be(notebook, desk)) {
    undoings.push_back(*undoing);
  }
  RC_ASSERT(why_the_rest_stays(notebook, desk) == std::vector<std::string>());
  RC_ASSERT(content_in_words(notebook, kLooks) == std::vector<std::string>());
  RC_ASSERT(check(notebook).empty());
  std::ranges::reverse(undoings);
  for (const std::int64_t undoing : undoings) {
    RC_ASSERT(notebook.undo(undoing, desk.by()).has_value());
  }

  RC_ASSERT(content_in_words(notebook) == before);
  RC_ASSERT(check(notebook).empty());
}

// Its trials share blades and media, so that what is undone and redone gets in each other's way.
RC_GTEST_PROP(EveryNotebook, IsSoundAndNamesTheEntriesInTheWayWhateverIsUndoneAndRedone, ()) {
  Desk desk;
  Notebook notebook = desk.new_notebook("a.keen");
  do_something(notebook, desk, *rc::gen::inRange(1, 6));

  for (int times = *rc::gen::inRange(1, 30); times > 0; --times) {
    if (*rc::gen::inRange(0, 5) == 0) take_something(notebook, desk);
    if (*rc::gen::inRange(0, 5) == 0) change_the_kit(notebook, desk);
    if (*rc::gen::inRange(0, 5) == 0) plan_something(notebook, desk);
    const auto entries = static_cast<std::int64_t>(notebook.journal().size());
    if (entries == 0) continue;
    const auto undone = notebook.undo(*rc::gen::inRange<std::int64_t>(1, entries + 1), desk.by());
    if (!undone) {
      RC_ASSERT(undone.error().sentence.find("does not fit") == std::string::npos);
    }
    RC_ASSERT(check(notebook) == std::vector<std::string>());
    for (const KeptTrial& kept : kept_trials(notebook)) {
      RC_ASSERT(kept_trial(notebook, kept.name).has_value());
      (void)kept_plan(notebook, kept.name);
    }
    (void)kept_kit(notebook);
  }
}

RC_GTEST_PROP(EveryNotebook, IsTheSameInANewOneItIsMergedInto, ()) {
  Desk desk;
  Notebook notebook = desk.new_notebook("a.keen");
  do_something(notebook, desk, *rc::gen::inRange(1, 8));
  Notebook fresh = desk.new_notebook("b.keen");

  const auto merged = merge(fresh, notebook, "merge a.keen", {}, desk.by());
  const auto again = merge(fresh, notebook, "merge a.keen", {}, desk.by());

  RC_ASSERT(merged.has_value());
  RC_ASSERT(content_in_words(fresh) == content_in_words(notebook));
  RC_ASSERT(again.has_value());
  RC_ASSERT(!again->entry.has_value());
  RC_ASSERT(check(fresh).empty());
}

RC_GTEST_PROP(EveryNotebook, HoldsTheSameWhicheverOfTwoCopiesIsMergedIntoTheOther, ()) {
  Desk desk;
  Notebook one = desk.new_notebook("a.keen");
  do_something(one, desk, *rc::gen::inRange(1, 5));
  RC_ASSERT(one.back_up_to(desk.folder.file("b.keen")).has_value());
  Notebook other = std::move(*Notebook::open_to_write(desk.folder.file("b.keen"), kOpener));
  strike_something(one, desk);
  grow_something(one, desk);
  strike_something(other, desk);
  if (*rc::gen::arbitrary<bool>()) grow_something(other, desk);
  RC_ASSERT(one.back_up_to(desk.folder.file("one.keen")).has_value());
  const Notebook one_before = std::move(*Notebook::open_to_read(desk.folder.file("one.keen")));
  const auto here = content_in_words(one);

  const auto there_into_here = merge(one, other, "merge b.keen", {}, desk.by());
  const auto here_into_there = merge(other, one_before, "merge one.keen", {}, desk.by());

  RC_ASSERT(there_into_here.has_value() == here_into_there.has_value());
  RC_ASSERT(check(one).empty());
  if (!there_into_here) {
    RC_ASSERT(content_in_words(one) == here);
    RC_ASSERT(!there_into_here.error().empty());
    return;
  }
  RC_ASSERT(readings_in_words(one) == readings_in_words(other));
  if (there_into_here->entry) {
    RC_ASSERT(one.undo(there_into_here->entry->entry, desk.by()).has_value());
    RC_ASSERT(content_in_words(one) == here);
  }
}

}  // namespace
}  // namespace keenfall::notebook
