// The answers on a terminal: a paragraph for each medium, then what holds across them.
#pragma once

#include "cli/look.h"
#include "telling/answers.h"

#include <string>

namespace keenfall::cli {

// Wrapped, and ending in a newline. Says why where there is no answer.
[[nodiscard]] std::string answers_text(const telling::Answers& answers, const Look& look);

}  // namespace keenfall::cli
