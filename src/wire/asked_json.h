// What is asked and planned in a trial, from a request and into an answer.
// Shapes: docs/wire/api.json (Asked, NewTrial).
//
// In: a request's body. Fails with every problem at once, each naming its field; what else a plan
// lacks, planning/plan_flaws.h says.
#pragma once

#include "base/result.h"
#include "notebook/plans.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

// As a page shows it.
struct AskedTold {
  std::vector<trials::Claim> claims;
  trials::Plan plan;
  std::optional<std::string> sealed_at_utc;  // absent: a draft
  std::optional<notebook::Sealing> sealing;  // absent: a draft, or sealed in another notebook
  std::vector<base::Problem> flaws;          // what a draft lacks before it can be sealed
  std::vector<std::string> advice;           // what is unwise about it, in sentences
};

struct AskedToWrite {
  notebook::Asked asked;
  std::string revision;  // of what it is a change of; of nothing kNothingAsked (revisions.h)
};

struct NewTrial {
  std::string name;  // not blank
  notebook::Asked asked;
};

[[nodiscard]] base::ResultOrProblems<AskedToWrite> asked_from(const std::string& body);
// The revision that is to be sealed; absent: the one that is kept.
[[nodiscard]] base::ResultOrProblems<std::optional<std::string>> seal_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<NewTrial> new_trial_from(const std::string& body);

}  // namespace keenfall::wire
