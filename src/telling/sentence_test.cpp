#include "telling/sentence.h"

#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

TEST(Sentences, AreTheirWordsOneAfterAnother) {
  const Sentence sentence{.words = {{"C against A is "}, {"not settled", Tone::not_settled}, {"."}},
                          .left_out = "all"};

  EXPECT_EQ(text_of(sentence), "C against A is not settled.");
}

TEST(Sentences, MayHaveNoToneAndNoWords) {
  EXPECT_EQ(plain("So it is."), (Sentence{.words = {{"So it is.", Tone::plain}}}));
  EXPECT_EQ(text_of(Sentence{}), "");
}

}  // namespace
}  // namespace keenfall::telling
