#include "notebook/typed_sheets.h"

#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/content.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::ANotebook;
using testing::kOpener;

class TypedSheets : public ANotebook {
 protected:
  void SetUp() override {
    notebook_.emplace(
        std::move(*Notebook::create(path_, {.uid = "u", .made_by = "test"}, kOpener)));
  }

  static TypedSheet a_sheet(const std::string& cells, std::int64_t revision = 0) {
    return {.trial_uid = "t",
            .revision = revision,
            .cells = cells,
            .at_utc = "2026-11-28T18:00:00Z",
            .who = "R."};
  }

  void forget(std::int64_t revision) {
    forget_sheet(
        *notebook_,
        {.trial_uid = "t", .revision = revision, .at_utc = "2026-11-28T19:00:00Z", .who = "M."});
  }

  std::optional<Notebook> notebook_;
};

TEST_F(TypedSheets, AreThereAgainInWhicheverBrowser) {
  EXPECT_FALSE(typed_sheet(*notebook_, "t"));

  EXPECT_EQ(keep_sheet(*notebook_, a_sheet("one")), 1);
  EXPECT_EQ(keep_sheet(*notebook_, a_sheet("two", 1)), 2);
  notebook_.reset();
  const auto again = Notebook::open_to_read(path_);

  EXPECT_EQ(typed_sheet(*again, "t"), a_sheet("two", 2));
  EXPECT_FALSE(typed_sheet(*again, ""));
  EXPECT_TRUE(check(*again).empty());
}

TEST_F(TypedSheets, AreNotWrittenOverUnseen) {
  ASSERT_TRUE(keep_sheet(*notebook_, a_sheet("mine")));

  const auto refused = keep_sheet(*notebook_, a_sheet("of another tab"));

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().kind, base::ProblemKind::conflicting);
  EXPECT_EQ(refused.error().sentence, "At 2026-11-28T18:00:00Z R. changed this sheet elsewhere.");
  EXPECT_EQ(typed_sheet(*notebook_, "t")->cells, "mine");
}

// A browser that still holds what was taken in elsewhere does not bring it back unseen.
TEST_F(TypedSheets, TellWhoeverHoldsOneThatWasTakenInMeanwhile) {
  ASSERT_TRUE(keep_sheet(*notebook_, a_sheet("mine")));
  forget(1);

  const auto refused = keep_sheet(*notebook_, a_sheet("mine again", 1));

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().sentence, "At 2026-11-28T19:00:00Z M. took this sheet in elsewhere.");
  EXPECT_EQ(typed_sheet(*notebook_, "t")->revision, 2);
  EXPECT_EQ(keep_sheet(*notebook_, a_sheet("a new one", 2)), 3);
}

TEST_F(TypedSheets, GoOnFromOneWhereThereNeverWasOne) {
  EXPECT_EQ(keep_sheet(*notebook_, a_sheet("of a copy of the notebook", 7)), 1);
}

TEST_F(TypedSheets, AreForgottenOnlyAsTheyWereSeen) {
  ASSERT_TRUE(keep_sheet(*notebook_, a_sheet("one")));
  ASSERT_TRUE(keep_sheet(*notebook_, a_sheet("two", 1)));

  forget(1);
  EXPECT_EQ(typed_sheet(*notebook_, "t")->cells, "two");

  forget(2);
  EXPECT_EQ(typed_sheet(*notebook_, "t")->cells, "");
  forget(3);
  EXPECT_EQ(typed_sheet(*notebook_, "t")->revision, 3);
}

TEST_F(TypedSheets, AreNeitherContentNorAnEntryOfTheJournal) {
  ASSERT_TRUE(keep_sheet(*notebook_, a_sheet("one")));

  EXPECT_TRUE(notebook_->journal().empty());
  EXPECT_TRUE(std::ranges::none_of(content_of(*notebook_), [](const ContentTable& table) {
    return table.name == "typed_sheet";
  }));
}

}  // namespace
}  // namespace keenfall::notebook
