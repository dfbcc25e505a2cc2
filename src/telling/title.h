// What a judgement is about, above all else.
#pragma once

#include "verdicts/judgement.h"

#include <string>

namespace keenfall::telling {

// "Thread push reading, gf; 36 runs".
[[nodiscard]] std::string title(const verdicts::Judgement& judgement);

// The thread and the way of cutting, where they are known; may be empty.
[[nodiscard]] std::string details(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
