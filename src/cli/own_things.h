// That a row of a person's own file is used where a known thing has the same name.
#pragma once

#include "cli/look.h"
#include "cli/outcome.h"

#include <string>
#include <vector>

namespace keenfall::cli {

// The outcome with a note on standard error; as it is where no name is both. Names as the
// catalogues note them ("steel C75S").
[[nodiscard]] Outcome with_note_of_own(Outcome outcome,
                                       const std::vector<std::string>& in_place_of_known,
                                       const Look& look);

}  // namespace keenfall::cli
