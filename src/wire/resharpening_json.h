// What bringing an edge back takes, as documented JSON.
//
// One document in UTF-8, ending in a newline: the question, and each way (the whole bevel reset, a
// micro-bevel set) with its stones. Lengths in um and mm, angles per side, volumes in mm^3, as the
// keys say. Shape: docs/wire/resharpening.schema.json, explained in docs/wire/README.md.
#pragma once

#include "sharpening/resharpening.h"
#include "sharpening/when_to_resharpen.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

inline constexpr int kResharpeningFormatVersion = 1;

struct WayBack {
  std::optional<trials::PerSideAngle> micro_bevel_angle;  // none: the bevel is reset
  sharpening::Resharpening found;
  std::optional<sharpening::MomentOverDraws> best_moment;  // on the first stone
};

struct ResharpeningDocument {
  std::string program_version;
  sharpening::ResharpeningQuestion question;
  std::optional<sharpening::DamageGrowth> growth;
  std::vector<WayBack> ways;  // at least one
};

[[nodiscard]] std::string resharpening_to_json(const ResharpeningDocument& document);

}  // namespace keenfall::wire
