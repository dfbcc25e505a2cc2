// The comparisons of one family of arms, however the draws of how long they last came about:
// ratios, bounds that hold together, verdicts, further runs.
//
// In: draws of log cuts for every arm, all of one length; jointly drawn, or from independent
// posteriors. A family is what is judged at once: its bounds hold for all of its pairs together.
#pragma once

#include "base/seed.h"
#include "blunting/inference/fit_diagnostics.h"
#include "materials/told_in.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <span>
#include <vector>

namespace keenfall::verdicts {

struct LastingArm {
  std::size_t index = 0;  // into Judgement::arms
  trials::Arm arm;
  int runs = 1;
  bool carries_steel = false;      // cut with several specimens, which the model tells apart
  blunting::Draws log_cuts;        // until Family::at, of the blades that were cut with
  blunting::Draws log_cuts_steel;  // of their steel; may be empty where it is not carried
  bool beyond_what_was_cut = false;
};

struct Family {
  At at;
  std::vector<LastingArm> arms;
  std::size_t batches = 8;  // parts of the draws by which bounds' errors are told
};

struct FamilyQuestion {
  double worth_it_margin = 1.5;
  std::vector<int> looks;  // as Question::looks
  base::Seed seed;
  materials::ToldIn told_in;  // likewise
};

// Places in Family::arms.
struct Pair {
  std::size_t one = 0;
  std::size_t other = 0;
};

[[nodiscard]] std::vector<Pair> all_pairs(std::size_t arms);

// One comparison a pair, ordered so that its median ratio is at least 1; without ratio_by_level;
// the only remark is on planned looks. Empty where there are no pairs.
[[nodiscard]] std::vector<Comparison> compare_family(const trials::Trial& trial,
                                                     const Family& family,
                                                     std::span<const Pair> pairs,
                                                     const FamilyQuestion& question);

// Draws of the log ratio of two arms of the family, known by their Judgement::arms index.
[[nodiscard]] blunting::Draws log_ratio_of(const Family& family,
                                           std::size_t a,
                                           std::size_t b,
                                           ClaimAbout claim);

// Adds to every comparison its ratio at the level the family is at (Comparison::ratio_by_level).
void add_ratio_at_level(std::span<Comparison> comparisons, const Family& family);

}  // namespace keenfall::verdicts
