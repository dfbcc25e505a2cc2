// Where the answer with the usual figures lies outside the range that all plausible ones give: a
// sentence that says so. The middle of what is plausible need not be where the usual figures are.
#pragma once

#include "wear/sensitivity.h"

#include <functional>
#include <string>

namespace keenfall::cli {

// With a space before it; empty where the answer lies inside, as both are shown, or where there is
// no range or no answer.
[[nodiscard]] std::string outside_words(const wear::Sensitivity& found,
                                        const std::string& answer,
                                        const std::function<std::string(double)>& shown);

}  // namespace keenfall::cli
