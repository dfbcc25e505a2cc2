// What the declared factors do, in sentences: where edges differ in something that is crossed.
#pragma once

#include "telling/section.h"
#include "verdicts/judgement.h"

#include <optional>

namespace keenfall::telling {

// Absent where only blades and media are crossed: across_media_words.h says that already.
[[nodiscard]] std::optional<Section> factor_section(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
