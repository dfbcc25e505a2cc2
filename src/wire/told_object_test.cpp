#include "wire/told_object.h"

#include <gtest/gtest.h>

namespace keenfall::wire {
namespace {

TEST(ToldObject, SaysOfWhichMediumAnAnswerIs) {
  telling::Told told;
  told.answers.media.push_back({.group = 1, .on = "On rope, slice"});

  const Json medium = told_json(told)["answers"]["media"][0];

  EXPECT_EQ(medium["medium"], 1);
  EXPECT_EQ(medium["on"], "On rope, slice");
}

}  // namespace
}  // namespace keenfall::wire
