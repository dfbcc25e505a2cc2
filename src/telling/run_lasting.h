// What one run lasted to where its medium is compared, or by its test: decided here, so that lists,
// pictures and JSON say the same of it.
#pragma once

#include "verdicts/judgement.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::telling {

// none: the edge was past a common reading before the first cut.
enum class RunKnown { exactly, at_least, at_most, between, none };

struct RunLasting {
  RunKnown known = RunKnown::exactly;
  double cuts = 0;     // between: from here
  double to_cuts = 0;  // between: to here
  std::string words;   // "59", "at least 255", "60 to 70"

  bool operator==(const RunLasting&) const = default;
};

// Nothing of a run that was not used, or that tells nothing.
[[nodiscard]] std::optional<RunLasting> run_lasting(const verdicts::RunResult& run);

// "exactly", "at_least": the value in JSON.
[[nodiscard]] std::string_view in_json(RunKnown known);

}  // namespace keenfall::telling
