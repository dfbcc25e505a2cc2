#include "cli/own_things.h"

#include <gtest/gtest.h>

namespace keenfall::cli {
namespace {

TEST(OwnThings, AreSaidToBeUsedInPlaceOfTheKnownOnOneLine) {
  const Outcome one = with_note_of_own({.out = "an answer"}, {"steel C75S"}, {});
  const Outcome two = with_note_of_own({}, {"steel C75S", "finish fine"}, {.width = 20});

  EXPECT_EQ(one.out, "an answer");
  EXPECT_EQ(one.err, "Note: your own steel C75S is used in place of the known one of that name.\n");
  EXPECT_EQ(two.err,
            "Note: your own steel C75S and finish fine are used in place of the known ones of that "
            "name.\n");
}

TEST(OwnThings, AreNotSpokenOfWhereNoNameIsBoth) {
  EXPECT_EQ(with_note_of_own({.err = "a problem\n"}, {}, {}).err, "a problem\n");
}

}  // namespace
}  // namespace keenfall::cli
