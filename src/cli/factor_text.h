// What the declared factors do, in sentences: where edges differ in something that is crossed.
#pragma once

#include "cli/look.h"
#include "verdicts/judgement.h"

#include <string>

namespace keenfall::cli {

// Empty where only blades and media are crossed: across_media_text.h says that already.
[[nodiscard]] std::string factor_section(const verdicts::Judgement& judgement, const Look& look);

}  // namespace keenfall::cli
