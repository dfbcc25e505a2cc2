// The steels, media and finishes that the apex simulator knows, each number with its mark and its
// source.
#pragma once

#include "cli/look.h"
#include "workbench/apex_catalogue.h"

#include <string>

namespace keenfall::cli {

[[nodiscard]] std::string apex_list_text(const workbench::ApexCatalogue& catalogue,
                                         const Look& look);

// One steel with the plausible range of each property.
[[nodiscard]] std::string apex_steel_text(const materials::Microstructure& steel, const Look& look);

}  // namespace keenfall::cli
