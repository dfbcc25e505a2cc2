// One simulated edge in words, numbers and a drawing.
#pragma once

#include "cli/look.h"
#include "wear/edge_story.h"
#include "wear/plausible_lives.h"
#include "wire/simulation_json.h"

#include <optional>
#include <string>

namespace keenfall::cli {

struct ApexAnswer {
  wear::EdgeStory story;
  std::optional<wire::CurveInNumbers> curve;      // of one medium, where it has one
  std::optional<wear::PlausibleLives> plausible;  // where draws were asked for
};

// The answer first, with its range or how to get one, then the table over the cuts, the section
// line, and what took the metal.
[[nodiscard]] std::string apex_text(const wear::EdgeQuestion& question,
                                    const ApexAnswer& answer,
                                    const Look& look);

}  // namespace keenfall::cli
