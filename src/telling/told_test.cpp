#include "telling/told.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

namespace keenfall::telling {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

std::vector<std::string> ids_of(const Told& told) {
  std::vector<std::string> ids;
  for (const Section& section : told.sections) ids.push_back(section.id);
  return ids;
}

// With something to say in every section.
Judgement full_judgement() {
  Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(verdicts::testing::around(0.8, 0.3));
  judgement.curve_check = {.passed = false, .smallest_p = 0.001, .where = {"A, 4 to 9 cuts"}};
  judgement.runs[0].remarks = {"twisted"};
  judgement.cannot_say = {"Nothing about the steels."};
  judgement.taken_as = {"Decimals are written with a comma."};
  judgement.comparisons[0].quick = verdicts::SecondOpinion{};
  return judgement;
}

TEST(Told, HasItsSectionsInOneOrder) {
  EXPECT_THAT(ids_of(told(full_judgement())),
              ElementsAre("across_media",
                          "factors",
                          "run_by_run",
                          "what_else",
                          "curve_warnings",
                          "noticed",
                          "cannot_say",
                          "how_read",
                          "second_opinion",
                          "fit"));
}

TEST(Told, HasASectionOnlyWhereThereIsSomethingToSay) {
  EXPECT_THAT(ids_of(told(made_judgement())),
              ElementsAre("across_media", "run_by_run", "what_else", "fit"));
}

TEST(Told, OfAFitThatIsNotUsableHasNoNumbersFromIt) {
  Judgement judgement = full_judgement();
  judgement.fit.usable = false;
  judgement.comparisons.clear();

  const Told all = told(judgement);

  EXPECT_TRUE(all.answers.instead);
  EXPECT_THAT(all.arms.columns, IsEmpty());
  EXPECT_THAT(ids_of(all), ElementsAre("noticed", "cannot_say", "how_read", "fit"));
}

TEST(Told, HasAHeadingForEverySection) {
  for (const Section& section : told(full_judgement()).sections) {
    EXPECT_FALSE(section.heading.empty()) << section.id;
    EXPECT_NE(section.heading.back(), '.') << section.id;
  }
}

// Each way of showing it says in its own words where the rest is to be found.
TEST(Told, NamesNoOptionOfACommand) {
  Judgement judgement = full_judgement();
  judgement.comparisons.resize(11, judgement.comparisons.back());
  judgement.media->interactions.resize(20, judgement.media->interactions.front());
  const Told all = told(judgement);
  std::string text;
  for (const MediumAnswers& medium : all.answers.media) {
    for (const Sentence& sentence : medium.gathered) text += text_of(sentence);
  }
  for (const Section& section : all.sections) {
    for (const Sentence& sentence : section.items) text += text_of(sentence);
  }

  EXPECT_EQ(text.find("--"), std::string::npos);
}

}  // namespace
}  // namespace keenfall::telling
