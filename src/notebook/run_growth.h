// A run that is met again, in a table or in another notebook: as it was, with more to it, or
// otherwise. Private to the folder.
#pragma once

#include "trials/trial.h"

#include <optional>
#include <string>

namespace keenfall::notebook {

struct Growth {
  // "reads 104 at 5, and here 140", behind "there": what the kept run has otherwise.
  std::optional<std::string> contradiction;
  // The kept run with what the other has more: readings in between or after, strikes, a void, what
  // was not recorded of it. Each part as it was kept, the line of its table included.
  trials::Run joined;
};

// May the run that is met again have less than the kept one? A copy of a notebook may be the older
// one; a table that lacks what was taken from it contradicts, unless that was struck out since.
enum class MayHaveLess { no, yes };

// The readings are in the same series.
[[nodiscard]] Growth growth_of(const trials::Run& kept,
                               const trials::Run& met,
                               MayHaveLess may_have_less);

// Do both have a reading or an edge life, and no contradiction? Then they are one run, whatever
// each is known by.
[[nodiscard]] bool are_surely_one(const trials::Run& kept, const trials::Run& met);

}  // namespace keenfall::notebook
