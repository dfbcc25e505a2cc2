// A stretch of a simulated edge drawn in text, about its lowest place: from the side its height,
// from above its land, at the start and at the end.
#pragma once

#include "cli/look.h"
#include "wear/edge_line.h"

#include <string>

namespace keenfall::cli {

struct DrawnSection {
  const wear::EdgeLine& start;
  const wear::EdgeLine& end;  // as many segments
  long cuts = 0;              // between the two
};

// Heights and widths to one scale each, said beside; each line ends in a newline.
[[nodiscard]] std::string section_drawing(const DrawnSection& drawn, const Look& look);

}  // namespace keenfall::cli
