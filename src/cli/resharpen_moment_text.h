// When to sharpen again, in one or two sentences.
#pragma once

#include "sharpening/when_to_resharpen.h"

#include <string>

namespace keenfall::cli {

// `way` begins it: "Resetting the bevel".
[[nodiscard]] std::string moment_sentence(const sharpening::MomentOverDraws& moment,
                                          const std::string& way);

}  // namespace keenfall::cli
