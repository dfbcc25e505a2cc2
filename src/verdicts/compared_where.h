// Where on the curves arms are compared: at half keenness, at another level, or at one reading;
// or where the edge fails a pass-or-fail test.
#pragma once

#include <string>

namespace keenfall::verdicts {

enum class ComparedAt { half_keenness, level, common_reading, test };

struct At {
  ComparedAt what = ComparedAt::half_keenness;
  double level = 2;    // times the start reading, for half_keenness and level
  double reading = 0;  // in Judgement::unit, for common_reading

  bool operator==(const At&) const = default;
};

// A reading that edges are compared at: as it was asked for, or to four figures where it came out
// of another unit.
[[nodiscard]] std::string asked_reading_text(double reading);

}  // namespace keenfall::verdicts
