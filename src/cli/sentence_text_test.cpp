#include "cli/sentence_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::cli {
namespace {

using telling::Sentence;
using telling::Tone;
using ::testing::HasSubstr;
using ::testing::Not;

Sentence a_sentence() {
  return {
      .words = {
          {"It is "}, {"longer", Tone::settled}, {", or "}, {"open", Tone::not_settled}, {"."}}};
}

TEST(SentenceText, ShowsTonesAsColoursWhereTheLookHasThem) {
  EXPECT_EQ(sentence_text(a_sentence(), {.colour = true}),
            "It is \x1b[36mlonger\x1b[0m, or \x1b[31mopen\x1b[0m.");
  EXPECT_EQ(sentence_text(a_sentence(), {}), "It is longer, or open.");
}

TEST(SentenceText, SaysThatJsonHasWhatIsLeftOut) {
  Sentence sentence = a_sentence();
  sentence.left_out = "all";

  EXPECT_EQ(sentence_text(sentence, {}), "It is longer, or open; --json has all.");
}

TEST(SentenceText, LetsNoWordsSteerTheTerminal) {
  EXPECT_THAT(sentence_text(telling::plain("Blade \x1b[2J"), {.colour = true}),
              Not(HasSubstr("\x1b")));
}

TEST(SentenceText, IsPlainAsciiWhereTheLookIs) {
  EXPECT_EQ(sentence_text(telling::plain("C (15° per side)"), {.unicode = false}),
            "C (15 deg per side)");
}

TEST(SentencesText, WrapsEachWithItsIndent) {
  const Sentence sentence = telling::plain("one two three");

  EXPECT_EQ(sentences_text({sentence, sentence}, {.first = 1, .rest = 2}, {.width = 10}),
            " one two\n  three\n one two\n  three\n");
}

}  // namespace
}  // namespace keenfall::cli
