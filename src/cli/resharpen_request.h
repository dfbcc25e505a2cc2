// What `keenfall resharpen` asks, read from its options and checked.
#pragma once

#include "base/result.h"
#include "cli/typed_options.h"
#include "sharpening/resharpening.h"
#include "sharpening/when_to_resharpen.h"

#include <optional>
#include <vector>

namespace keenfall::cli {

struct ResharpenRequest {
  sharpening::ResharpeningQuestion question;  // the micro-bevel, if any, apart
  std::optional<trials::PerSideAngle> micro_bevel_angle;
  std::vector<sharpening::Stone> stones;  // the one asked for first
  std::optional<sharpening::DamageGrowth> growth;
};

// Fails with a problem for each option that is missing or whose value cannot be used.
[[nodiscard]] base::ResultOrProblems<ResharpenRequest> resharpen_request(const TypedOptions& typed);

}  // namespace keenfall::cli
