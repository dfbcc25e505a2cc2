// One trial's readings of one kind, made ready for fitting: log bluntness per checkpoint, per run.
//
// Bluntness always rises: it is the reading, or 1/reading where higher is keener. Struck readings
// and voided runs are left out and counted. A reading of zero from an instrument that cannot show
// less is kept as "below the resolution" (censored). A run that cannot inform the curve is set
// aside with the reason; it never disappears. Fails when no run is left.
#pragma once

#include "base/result.h"
#include "blunting/inference/model_spec.h"
#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::blunting {

// What may share a fit: one kind of reading, with one thread.
struct SeriesKey {
  std::string kind;
  std::string thread;

  bool operator==(const SeriesKey&) const = default;
};

// The distinct keys of the trial, those with most readings first. Only kinds meant for curves.
[[nodiscard]] std::vector<SeriesKey> fits_of(const trials::Trial& trial);

struct Checkpoint {
  double cuts = 0;
  double log_cuts = 0;       // -infinity at the start
  double log_bluntness = 0;  // centre of the repeats; the bound itself when censored
  double relative_variance = 1;
  bool below_resolution = false;  // true: all that is known is the side of the bound it lies on
  int readings = 0;
};

struct RunData {
  std::size_t run = 0;  // index into Trial::runs
  std::size_t arm = 0;  // index into BluntingData::arms
  std::size_t medium = 0;
  std::optional<std::size_t> block;     // block x medium, where blocks are recorded
  std::optional<std::size_t> specimen;  // where the blade has several
  double order_place = 0;               // -0.5 the first run of the trial, 0.5 the last
  std::vector<Checkpoint> checkpoints;  // by rising cuts
};

struct RunAside {
  std::size_t run = 0;
  std::string because;
};

struct BluntingData {
  trials::ReadingKind kind;
  std::string unit;
  double recorded_per_told = 1;  // a reading in `unit` times this is in the unit it was recorded in
  std::string thread;
  std::vector<trials::Arm> arms;
  std::vector<std::size_t> medium_of_arm;
  std::vector<std::string> media;  // medium with method: what shares a scatter and is compared
  std::size_t block_count = 0;     // block x medium levels
  std::size_t specimen_count = 0;
  bool has_order = false;  // the order of cutting is known of every run, and they differ
  std::vector<RunData> runs;
  std::vector<RunAside> set_aside;
  double repeat_degrees_of_freedom = 0;
  double repeat_sum_of_squares = 0;
  PriorCentres data_centres;  // mean log start reading; mean log cuts of readings after the start

  // A zero below the resolution is a bluntness below the bound, or above it where higher is keener.
  [[nodiscard]] bool higher_is_keener() const {
    return kind.keener_when == trials::KeenerWhen::higher;
  }
};

[[nodiscard]] base::Result<BluntingData> prepare(const trials::Trial& trial,
                                                 const SeriesKey& key,
                                                 ReadingErrors errors);

// bluntness <-> reading: the reading itself, or its reciprocal.
[[nodiscard]] double log_reading_of(const BluntingData& data, double log_bluntness);

}  // namespace keenfall::blunting
