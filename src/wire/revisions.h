// Which saying of something a page has before it: told with it, and sent back with a change, so
// that nobody writes over what was changed elsewhere and was not seen. The same content has the
// same revision, also when it was something else meanwhile.
#pragma once

#include "notebook/kit.h"
#include "notebook/plans.h"

#include <string>
#include <string_view>

namespace keenfall::wire {

// Of a trial in which nothing is asked or planned.
inline constexpr std::string_view kNothingAsked = "none";

// 16 hexadecimal digits.
[[nodiscard]] std::string revision_of(const notebook::KitThing& thing);
[[nodiscard]] std::string revision_of(const notebook::Asked& asked);

}  // namespace keenfall::wire
