// What is said of blades that were cut in several media: does the advantage depend on the medium,
// do the blades lie further apart in one than in another, is their order the same? Values only;
// media_compared.h finds them.
//
// Ratios, spreads (standard deviations of natural logs) and probabilities: dimensionless.
#pragma once

#include "numerics/interval.h"
#include "verdicts/compared_where.h"
#include "verdicts/cuts_to_level.h"
#include "verdicts/verdict.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::verdicts {

// The blades (each with its edge) and the media of a table with every combination cut.
struct MediumOfTable {
  std::vector<std::size_t> arms;  // one for each blade of the table: indices into Judgement::arms
  std::vector<CutsToLevel> lasting;  // of each of these, to AcrossMedia::at
  numerics::Interval spread;         // sd over the blades of log lasting
  std::vector<std::size_t> order;    // of the blades, the longest-lasting first
  double order_probability = 0;

  bool operator==(const MediumOfTable&) const = default;
};

// Two media, indices into AcrossMedia::media.
struct MediaPair {
  std::size_t first = 0;
  std::size_t second = 0;
  numerics::Interval lasting_ratio;  // second to first, on geometric average over the blades
  numerics::Interval spread_ratio;   // second to first
  double probability_same_order = 0;
  double probability_same_longest = 0;  // one blade lasts longest in both

  bool operator==(const MediaPair&) const = default;
};

// (a / b in the first medium) to (a / b in the second), ordered so that the median is at least 1.
struct MediaInteraction {
  std::size_t a = 0;  // blades: places in MediumOfTable::arms
  std::size_t b = 0;
  std::size_t first = 0;  // media: indices into AcrossMedia::media
  std::size_t second = 0;
  numerics::Interval ratio;
  RatioBounds simultaneous;                // over all interactions here
  Verdict verdict = Verdict::not_settled;  // by the simultaneous bounds
  Verdict single_verdict = Verdict::not_settled;

  bool operator==(const MediaInteraction&) const = default;
};

struct OrderAgreement {
  double kendall_w = 0;  // 0: none, 1: one order in all media
  double p = 1;          // that orders by chance agree so well
  bool exact = true;
  double monte_carlo_error = 0;

  bool operator==(const OrderAgreement&) const = default;
};

struct AcrossMedia {
  At at;  // where the blades are compared
  std::vector<MediumOfTable> media;
  std::vector<MediaPair> pairs;
  std::vector<MediaInteraction> interactions;  // empty where they are too many
  OrderAgreement agreement;                    // of the posterior medians, over all media
  std::vector<std::size_t> arms_left_out;      // not every medium of the table, or not every blade
  std::vector<std::string> remarks;

  bool operator==(const AcrossMedia&) const = default;
};

// "depends on the medium, by enough to matter": also the value in JSON.
[[nodiscard]] std::string_view dependence_in_words(Verdict verdict);

}  // namespace keenfall::verdicts
