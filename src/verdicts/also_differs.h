// What else differed between two arms that are compared: matched, differs, or not recorded.
//
// A finish with a grit whose system is unknown is never taken as matched across stones. Lots,
// operators and specimens are matched when both arms were cut with the same set of them.
#pragma once

#include "materials/told_in.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

#include <vector>

namespace keenfall::verdicts {

struct TwoArms {
  const trials::Arm& a;
  const trials::Arm& b;
};

[[nodiscard]] std::vector<AlsoDiffers> what_else_differs(const trials::Trial& trial,
                                                         const TwoArms& arms,
                                                         const materials::ToldIn& told);

}  // namespace keenfall::verdicts
