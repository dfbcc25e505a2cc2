// Mixed work as a person writes it: "90 new sisal matting, 10 uplifted sisal matting, pause 8 h
// wet".
//
// Parts in their order, parted by commas: a number of cuts and a medium's name, or a pause of so
// many hours, dry (the usual) or wet, where "at 0.02 um/h" says how fast the land grows; else
// wear::kWetLandGrowthUmPerHour. The whole begins anew until a run ends. Refused: a part that is
// neither, a medium that is not known, work without a cut.
#pragma once

#include "base/result.h"
#include "wear/work_plan.h"
#include "workbench/apex_catalogue.h"

#include <string>

namespace keenfall::workbench {

// Named after its parts.
[[nodiscard]] base::Result<wear::WorkPlan> work_in_words(const std::string& words,
                                                         const ApexCatalogue& catalogue);

}  // namespace keenfall::workbench
