// What is tapped or typed at the bench: one entry each, never changed and never deleted.
//
// How a run stands follows from its entries alone (standing.h). An entry is known by its id, so
// that one that arrives twice counts once; taking back is an entry too, which names the one it
// takes back. Cuts are as the trial counts them, readings in the unit that they were
// typed in, angles per side in degrees. Values only.
#pragma once

#include "trials/edge.h"
#include "trials/trial.h"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>

namespace keenfall::bench {

struct CutsMade {
  double cuts = 1;  // above 0

  bool operator==(const CutsMade&) const = default;
};

struct Happened {
  trials::EventKind kind = trials::EventKind::other;
  double at_cuts = 0;  // 0 or more
  std::string words;   // empty: those of its kind

  bool operator==(const Happened&) const = default;
};

struct ReadingTaken {
  double at_cuts = 0;  // 0 or more
  double reading = 0;
  std::string unit;        // that it was typed in, one that converts; empty: the sheet's
  std::string station;     // empty: not said
  std::string scale_line;  // as the scale sent it; empty: typed
  std::string note;        // empty: none

  bool operator==(const ReadingTaken&) const = default;
};

struct AngleMeasured {
  trials::PerSideAngle angle;
  std::string where;  // "heel, left"; empty: not said

  bool operator==(const AngleMeasured&) const = default;
};

// One stage of bringing the edge to its start.
struct Sharpened {
  std::string stone;                   // not empty
  std::optional<int> passes_per_side;  // one-handed: as counted
  std::optional<double> minutes;       // above 0
  std::string burr;                    // how the burr was taken off; empty: not said

  bool operator==(const Sharpened&) const = default;
};

enum class StartDecision { matched, sharpen_again, go_on_unmatched };

struct StartDecided {
  StartDecision decision = StartDecision::matched;
  std::string reason;  // not empty where it goes on unmatched

  bool operator==(const StartDecided&) const = default;
};

struct Paused {
  bool operator==(const Paused&) const = default;
};

struct Resumed {
  bool blade_wiped = false;
  bool piece_changed = false;

  bool operator==(const Resumed&) const = default;
};

// A new piece of the lot was taken.
struct PieceTaken {
  bool operator==(const PieceTaken&) const = default;
};

struct Noted {
  std::string words;  // not empty

  bool operator==(const Noted&) const = default;
};

// The run is over and counts, as far as it went.
struct Closed {
  std::string reason;  // empty: the plan says so

  bool operator==(const Closed&) const = default;
};

// The run is over and does not count; it stays to be seen.
struct Voided {
  std::string reason;  // not empty

  bool operator==(const Voided&) const = default;
};

struct TakenBack {
  std::string id;  // of the entry that is taken back

  bool operator==(const TakenBack&) const = default;
};

using WhatWasDone = std::variant<CutsMade,
                                 Happened,
                                 ReadingTaken,
                                 AngleMeasured,
                                 Sharpened,
                                 StartDecided,
                                 Paused,
                                 Resumed,
                                 PieceTaken,
                                 Noted,
                                 Closed,
                                 Voided,
                                 TakenBack>;

struct Entry {
  std::string id;          // made by the device, never used twice; not empty
  std::string device;      // by which it came; empty: the desk
  std::int64_t at_ms = 0;  // by the device's clock, since 1970 in UTC
  WhatWasDone what;

  bool operator==(const Entry&) const = default;
};

}  // namespace keenfall::bench
