// With what a device begins at the bench.
#pragma once

#include "base/result.h"
#include "wire/bench_to_cut.h"
#include "workbench/open_app.h"

namespace keenfall::workbench {

// Of the open notebook, if one is. Fails where it cannot be read; throws as trials_at_hand.h says.
[[nodiscard]] base::Result<wire::BenchToCut> bench_to_cut(OpenApp& open, bool is_at_desk);

}  // namespace keenfall::workbench
