// The kinds of sharpness reading: what is done, in which unit, and which way is keener.
//
// Different kinds, and different threads of one kind, never share an axis or a fit. Kinds for
// curves need readings above zero; kinds with honest zeros (chips, glint, rungs) are evidence.
// docs/quantities.md lists them; sizes and customs are common practice where no source is named.
#pragma once

#include "base/result.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace keenfall::trials {

enum class KeenerWhen { lower, higher };

enum class ReadingUse {
  curve,    // above zero, rises or falls steadily as the edge blunts: a blunting curve is fitted
  evidence  // counts, shares, pass/fail rungs: shown, and used to explain, but no curve is fitted
};

enum class ZeroReading {
  refused,           // a zero is a slip of the pen
  below_resolution,  // a zero means "less than the instrument's smallest step"
  honest             // a zero is a reading like any other (evidence kinds)
};

struct ReadingKind {
  std::string name;   // as tables write it: thread_push
  std::string words;  // as sentences say it: thread push reading
  std::string unit;   // the default unit; a table may use another of the same dimension
  KeenerWhen keener_when = KeenerWhen::lower;
  ReadingUse use = ReadingUse::curve;
  double default_level = 2;  // times the start reading at which edges are compared (above 1)
  ZeroReading zero = ZeroReading::refused;
  std::optional<double> resolution;  // smallest step of the instrument, in `unit`
  std::optional<double> largest;     // largest possible reading in `unit` (percent, rungs)

  bool operator==(const ReadingKind&) const = default;
};

// All kinds this program knows by itself.
[[nodiscard]] std::span<const ReadingKind> known_reading_kinds();

// By name, ignoring case, spaces, hyphens and underscores; nullptr when unknown.
[[nodiscard]] const ReadingKind* find_reading_kind(std::string_view name);

// Why an edge cannot read so, by the rules that tables are taken by; nothing where it can. `unit`:
// that it is read in; one that does not convert to the kind's counts as the kind's.
[[nodiscard]] std::optional<base::Problem> problem_of_reading(const ReadingKind& kind,
                                                              double reading,
                                                              const std::string& unit);

}  // namespace keenfall::trials
