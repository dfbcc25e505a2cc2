// What is refused because somebody else, or the same person in another tab, changed it since it was
// looked at: a sentence that says what it is now. Problems of kind `conflicting`, at the column
// `revision`.
#pragma once

#include "base/result.h"
#include "notebook/kit.h"
#include "notebook/plans.h"

#include <optional>
#include <string>

namespace keenfall::workbench {

// "The blade A was changed elsewhere meanwhile. It is now: X90CrMoV18, 58.5 HRC."
[[nodiscard]] base::Problem changed_elsewhere(const notebook::KitThing& now);
// now: absent where nothing is asked or planned any more.
[[nodiscard]] base::Problem asked_elsewhere(const std::string& trial,
                                            const std::optional<notebook::KeptPlan>& now);

}  // namespace keenfall::workbench
