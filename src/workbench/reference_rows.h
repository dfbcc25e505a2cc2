// Steels and grits of the reference tables while a person types one.
#pragma once

#include "wire/app_pages.h"

#include <string>
#include <vector>

namespace keenfall::workbench {

// Those of which a designation holds the text, whatever its case and spaces: first those that begin
// with it. All where the text is blank.
[[nodiscard]] std::vector<wire::SteelRow> steels_like(const std::string& text);

// A grit with its system and its neighbours in others; a bare number in every system that has it; a
// size, the nearest in each system; else those of which the name holds the text. At most 60.
[[nodiscard]] std::vector<wire::GritWords> grits_like(const std::string& text);

}  // namespace keenfall::workbench
