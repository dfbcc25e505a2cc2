// What the apex simulator makes, as documented JSON: a whole trial with its truth, and one edge
// over the cuts.
//
// One document in UTF-8, ending in a newline, that says of itself that nothing in it was measured.
// Shapes: docs/wire/simulation.schema.json and apex.schema.json.
#pragma once

#include "blunting/curves/wear_and_hits_fit.h"
#include "wear/edge_story.h"
#include "wear/plausible_lives.h"
#include "wear/simulated_trial.h"

#include <optional>
#include <string>

namespace keenfall::wire {

inline constexpr int kSimulationFormatVersion = 1;

// Said wherever a simulated curve is shown.
inline constexpr const char* kSimulatedCaution = "plausible parameters, not validated";

struct SimulationDocument {
  std::string program_version;
  const wear::TrialPlan& plan;
  const wear::SimulatedTrial& made;
};
[[nodiscard]] std::string simulation_to_json(const SimulationDocument& document);

// The curve of wear and hits that lies nearest to the mean of many edges like it.
struct CurveInNumbers {
  blunting::WearAndHits computed;  // without simulating a cut
  blunting::WearAndHitsFit fitted;
};

struct ApexDocument {
  std::string program_version;
  const wear::EdgeQuestion& question;
  const wear::EdgeStory& story;
  std::optional<CurveInNumbers> curve;                 // of one medium; none: mixed work
  std::optional<wear::PlausibleLives> plausible = {};  // none: not asked for
};
[[nodiscard]] std::string apex_to_json(const ApexDocument& document);

}  // namespace keenfall::wire
