// What `keenfall resharpen` asks, read from its options and checked.
#pragma once

#include "base/result.h"
#include "cli/typed_options.h"
#include "sharpening/resharpening.h"
#include "sharpening/when_to_resharpen.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::cli {

struct ResharpenRequest {
  sharpening::ResharpeningQuestion question;  // the micro-bevel, if any, apart
  std::optional<trials::PerSideAngle> micro_bevel_angle;
  std::vector<sharpening::Stone> stones;  // the one asked for first
  std::optional<sharpening::DamageGrowth> growth;
  std::vector<std::string> in_place_of_known;  // of the files: "stone diamond"
};

// Fails with a problem for each option that is not known, missing, or whose value cannot be used or
// does not go with another's; and for each wrong cell of the files named.
[[nodiscard]] base::ResultOrProblems<ResharpenRequest> resharpen_request(const ReadOptions& read);

// The engine's problem, under the option by which its field came.
[[nodiscard]] base::Problem under_option_of_field(base::Problem problem);

}  // namespace keenfall::cli
