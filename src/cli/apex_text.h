// One simulated edge in words, numbers and a drawing.
#pragma once

#include "cli/look.h"
#include "wear/edge_story.h"
#include "wire/simulation_json.h"

#include <optional>
#include <string>

namespace keenfall::cli {

// The answer first, then the table over the cuts, the section line, and what took the metal.
[[nodiscard]] std::string apex_text(const wear::EdgeQuestion& question,
                                    const wear::EdgeStory& story,
                                    const std::optional<wire::CurveInNumbers>& curve,
                                    const Look& look);

}  // namespace keenfall::cli
