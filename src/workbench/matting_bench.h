// The demo's trial: an invented floor-laying workshop trims new and uplifted matting with three
// knives. No blade was cut: the readings are drawn from a seed, around an invented truth.
#pragma once

#include "base/seed.h"
#include "trials/trial.h"

namespace keenfall::workbench {

// Picked so that three kinds of verdict appear and the estimates lie near the truth; other seeds
// tell other stories.
inline constexpr base::Seed kMattingBenchSeed{32};

[[nodiscard]] trials::Trial matting_bench(base::Seed seed);

}  // namespace keenfall::workbench
