// What `keenfall scale` says of a scale: a reading a line, and in sentences what happened to it.
//
// Lines end in a newline and fit the look's width, but for lines of the scale that are longer.
#pragma once

#include "cli/look.h"
#include "scale/live_scale.h"

#include <string>

namespace keenfall::cli {

// What is new between two states; empty where nothing is to be said.
[[nodiscard]] std::string scale_news_text(const scale::ScaleState& before,
                                          const scale::ScaleState& now,
                                          const Look& look);

[[nodiscard]] std::string held_text(const scale::HeldReading& held, const Look& look);

}  // namespace keenfall::cli
