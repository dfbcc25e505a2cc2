// Claims and plans of two notebooks that become one.
#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/content_in_words_test.h"
#include "notebook/kept_trials.h"
#include "notebook/merge.h"
#include "notebook/plans.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::content_in_words;
using testing::kOpener;
using testing::what_is_asked;

class MergingPlans : public testing::ANotebook {
 protected:
  MergingPlans() {
    EXPECT_TRUE(take(here_, a_trial(), {}, next()));
    EXPECT_TRUE(make_trial(here_, "felt", what_is_asked(), next()));
  }
  [[nodiscard]] Notebook made_as(const std::string& name) const {
    return std::move(
        *Notebook::create(scratch_.file(name), {.uid = name, .made_by = "test"}, kOpener));
  }
  [[nodiscard]] Notebook copied() const {
    EXPECT_TRUE(here_.back_up_to(scratch_.file("there.keen")));
    return std::move(*Notebook::open_to_write(scratch_.file("there.keen"), kOpener));
  }
  void seal_at(Notebook& notebook, const std::string& at_utc) {
    Authorship by = next();
    by.at_utc = at_utc;
    ASSERT_TRUE(seal(notebook, "felt", by));
  }
  auto merge_it(const Notebook& there, const MergeRules& rules = {}) {
    return merge(here_, there, "merge there.keen", rules, next());
  }

  Notebook here_ = made();
};

TEST_F(MergingPlans, BringsATrialThatIsOnlyPlannedIntoANewNotebook) {
  seal_at(here_, "2026-11-27T07:00:00Z");
  Notebook fresh = made_as("fresh.keen");

  const auto merged = merge(fresh, here_, "merge bench.keen", {}, next());

  ASSERT_TRUE(merged) << merged.error().front().sentence;
  EXPECT_EQ(merged->trials_added, 2U);
  EXPECT_EQ(*kept_plan(fresh, "felt"), *kept_plan(here_, "felt"));
  EXPECT_EQ(content_in_words(fresh), content_in_words(here_));
  EXPECT_TRUE(check(fresh).empty());
  ASSERT_TRUE(fresh.undo(merged->entry->entry, next()));
  EXPECT_TRUE(content_in_words(fresh).empty());
}

TEST_F(MergingPlans, TakesOverASealing) {
  const Notebook there = [&] {
    Notebook copy = copied();
    seal_at(copy, "2026-11-27T07:00:00Z");
    return copy;
  }();

  ASSERT_TRUE(merge_it(there));

  EXPECT_EQ(kept_plan(here_, "felt")->sealed_at_utc, "2026-11-27T07:00:00Z");
}

TEST_F(MergingPlans, KeepsTheEarlierOfTwoSealings) {
  Notebook there = copied();
  seal_at(there, "2026-11-27T07:00:00Z");
  seal_at(here_, "2026-11-27T09:00:00Z");

  ASSERT_TRUE(merge_it(there));

  EXPECT_EQ(kept_plan(here_, "felt")->sealed_at_utc, "2026-11-27T07:00:00Z");
}

TEST_F(MergingPlans, FindsOneTrialPlannedOtherwiseInConflict) {
  Notebook there = copied();
  Asked other = what_is_asked();
  other.plan.runs_each = 9;
  ASSERT_TRUE(change_asked(there, "felt", other, next()));
  const auto before = content_in_words(here_);

  const auto merged = merge_it(there);
  const auto kept_here = merge_it(there, {.keeps_what_is_here = true});

  ASSERT_FALSE(merged);
  EXPECT_EQ(merged.error()[0].sentence,
            "What is asked and planned in felt is not the same in both notebooks.");
  EXPECT_EQ(merged.error()[0].accepted, "--keep-here, to let what is here stand");
  ASSERT_TRUE(kept_here);
  EXPECT_EQ(kept_here->not_taken, 1U);
  EXPECT_EQ(content_in_words(here_), before);
}

TEST_F(MergingPlans, CallsThePlansBladesAsTheyAreCalledHere) {
  Notebook other = made_as("other.keen");
  ASSERT_TRUE(take(other, a_trial(), {}, next()));
  ASSERT_TRUE(make_trial(other, "felt", what_is_asked(), next()));

  ASSERT_TRUE(merge_it(other, {.alike_names = AlikeNames::are_apart, .apart = "T."}));

  const auto plan = kept_plan(here_, "felt (T.)");
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->plan.arms[1].blade, "B (T.)");
  EXPECT_EQ(plan->plan.house_blade, "A (T.)");
  EXPECT_EQ(kept_plan(here_, "felt")->plan, what_is_asked().plan);
}

TEST_F(MergingPlans, OfANotebookOfAnEarlierSchemaAsksForNone) {
  const auto earlier =
      Notebook::open_to_read(std::string(KEENFALL_SOURCE_DIR) + "/tests/notebooks/schema_2.keen");
  ASSERT_TRUE(earlier);
  Notebook fresh = made_as("fresh.keen");

  ASSERT_TRUE(merge(fresh, *earlier, "merge schema_2.keen", {}, next()));

  EXPECT_FALSE(kept_plan(*earlier, "felt"));
  EXPECT_FALSE(kept_plan(fresh, "felt"));
  EXPECT_FALSE(kept_trial(fresh, "felt")->runs.empty());
}

}  // namespace
}  // namespace keenfall::notebook
