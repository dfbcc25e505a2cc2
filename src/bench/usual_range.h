// Between which readings nobody is surprised: for "look again?" when one is typed.
//
// By what stands at this checkpoint already, where there is something: its median times or by
// e^(3.5 x 0.15), three and a half times the scatter of readings taken by hand on a slow scale
// (common practice, no source). For the first one by the checkpoint before: an edge gets no
// keener, but for two thirds at most by scatter and taken-off residue; and between checkpoints that
// grow by a factor of two a reading seldom does more than treble. Before the first cut by the start
// gate, three tolerances wide. A slip of a factor of ten falls outside.
#pragma once

#include "bench/run_sheet.h"
#include "bench/start_gate.h"

#include <optional>
#include <span>

namespace keenfall::bench {

// Readings between these surprise nobody; one outside is worth a second look. Never shown before
// the run is closed: who has seen an earlier value reads the next one towards it.
struct UsualRange {
  double lowest = 0;
  double highest = 0;

  bool operator==(const UsualRange&) const = default;
};

// Is it worth a second look? Never where there is nothing to go by.
[[nodiscard]] bool surprises(const std::optional<UsualRange>& usual, double reading);

// `here`: readings of this checkpoint. `before`: those of the checkpoint read before it. Absent
// where there is nothing to go by, and for kinds with honest zeros.
[[nodiscard]] std::optional<UsualRange> usual_range(const RunSheet& sheet,
                                                    std::span<const SpotReading> here,
                                                    std::span<const SpotReading> before);

}  // namespace keenfall::bench
