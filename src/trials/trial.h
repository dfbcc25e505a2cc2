// A trial as it was done: arms, runs, checkpoints, readings, edge lives, events, strikes.
//
// A run (one sharpen-to-stop) is the unit of replication and belongs to one arm: blade x edge x
// medium x cut method. Several readings at one checkpoint are one value with a small error. A run
// may have readings, edge lives by pass-or-fail tests, or both. Nothing is deleted: a struck
// reading and a voided run stay, with their reason. A doubtful reading is not trusted, but counts.
// Readings are kept in their series' unit; those of one kind and thread are judged in the first's.
// Invariants (kept by whoever builds a Trial): every Run::arm names a blade in Trial::blades, every
// Reading::series indexes Trial::series, cuts >= 0, readings finite.
#pragma once

#include "trials/blade.h"
#include "trials/counted.h"
#include "trials/cutting.h"
#include "trials/edge.h"
#include "trials/edge_life.h"
#include "trials/reading_kind.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::trials {

struct Arm {
  std::string blade;
  EdgePreparation edge;
  Medium medium;
  CutMethod method;

  bool operator==(const Arm&) const = default;
};

// One kind of reading with one thread (or card): what may share a fit. Lots of a thread are
// separate series of the same fit, tied together by blocks.
struct ReadingSeries {
  ReadingKind kind;
  std::string unit;        // all readings of the series are in this unit
  std::string thread;      // empty: not recorded
  std::string thread_lot;  // empty: not recorded

  bool operator==(const ReadingSeries&) const = default;
};

struct Reading {
  std::size_t series = 0;                    // index into Trial::series
  double cuts = 0;                           // the checkpoint: cuts made before this reading, >= 0
  double reading = 0;                        // in the series' unit
  std::string station;                       // marked place on the edge; empty: not recorded
  std::optional<int> repeat;                 // number within the checkpoint, as recorded
  std::optional<std::string> struck_reason;  // set: struck out, shown but not used
  std::optional<std::string> doubtful_reason;  // set: not trusted, and used all the same
  std::size_t line = 0;                        // where it stands in its table; 0: nowhere

  bool operator==(const Reading&) const = default;
};

enum class EventKind { twisted, hit_something, board_touched, wet, pause, other };

struct Event {
  EventKind kind = EventKind::other;
  double cuts = 0;         // the cut it happened at
  std::string as_written;  // the table's words

  bool operator==(const Event&) const = default;
};

// The note of a run that a simulator made: whoever tells of it says so first.
inline constexpr std::string_view kSimulatedNote = "simulated: no edge was cut";

struct Run {
  std::string name;  // unique within its arm only
  Arm arm;
  std::string specimen;      // empty: the blade's only one
  std::string block;         // empty: not recorded
  std::optional<int> order;  // place in the order of cutting
  std::string medium_lot;
  std::string operator_name;
  std::string date;
  std::optional<int> sharpenings_since_new;
  std::vector<Reading> readings;
  std::vector<EdgeLife> edge_lives;  // by pass-or-fail tests; usually none or one
  std::vector<Event> events;
  std::vector<std::string> deviations;
  std::vector<std::string> notes;
  std::optional<std::string> voided_reason;

  bool operator==(const Run&) const = default;
};

struct Trial {
  std::string name;
  Counted counted;  // what the fields called cuts count
  std::vector<Blade> blades;
  std::vector<ReadingSeries> series;
  std::vector<Run> runs;
  std::vector<std::string> remarks;  // what was noticed while taking it in, in plain sentences

  bool operator==(const Trial&) const = default;
};

// The distinct arms in order of first appearance.
[[nodiscard]] std::vector<Arm> arms_of(const Trial& trial);

// nullptr when the trial has no such blade.
[[nodiscard]] const Blade* find_blade(const Trial& trial, const std::string& name);

}  // namespace keenfall::trials
