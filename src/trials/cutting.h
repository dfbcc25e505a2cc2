// What is cut and how: the medium with its condition, and the cut method.
//
// A result always holds for cutting this medium, this way. The lot (which batch) belongs to a run:
// lots of one medium are tied together by blocks, not declared equal.
#pragma once

#include "materials/told_in.h"

#include <optional>
#include <string>

namespace keenfall::trials {

struct Medium {
  std::string name;
  std::string condition;  // "dry", "wet"; empty: not recorded

  bool operator==(const Medium&) const = default;
};

enum class Motion {
  not_recorded,
  push,  // straight through, no slide
  draw,  // pulled along its length while the stock is held
  slice  // push and draw together
};

struct CutMethod {
  Motion motion = Motion::not_recorded;
  std::string as_written;  // the table's word where it is none of the above ("rocking on a board")
  std::optional<double> cut_length_mm;  // length of medium parted by one cut
  std::optional<double> edge_used_mm;   // length of edge that meets the medium
  std::string board;                    // backing; empty: not recorded

  bool operator==(const CutMethod&) const = default;
};

// "slice of 100 mm on 40 mm of edge"; empty when nothing was recorded.
[[nodiscard]] std::string in_words(const CutMethod& method, const materials::ToldIn& told = {});

}  // namespace keenfall::trials
