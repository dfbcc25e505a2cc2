// An entry as a flat list of fields, for whoever writes it down and reads it back: a row of a
// notebook, an object of JSON. Which field means what is said in entry.h.
#pragma once

#include "bench/entry.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace keenfall::bench {

struct EntryFields {
  std::string what;  // one of entry_words()
  std::optional<double> cuts;
  std::optional<double> reading;
  std::optional<double> angle_deg;
  std::string place_on_edge;  // station, or where an angle was measured
  std::string subject;        // kind of event, stone, decision, id of what is taken back
  std::string words;
  std::string scale_line;
  std::optional<int> passes_per_side;
  std::optional<double> minutes;
  bool blade_wiped = false;
  bool piece_changed = false;

  bool operator==(const EntryFields&) const = default;
};

// "cuts", "happened", "reading" ...: in the order of WhatWasDone.
[[nodiscard]] std::span<const std::string_view> entry_words();
// "matched", "sharpen again", "go on unmatched": in the order of StartDecision.
[[nodiscard]] std::span<const std::string_view> decision_words();
// "twisted", "hit something" ...: in the order of trials::EventKind.
[[nodiscard]] std::span<const std::string_view> event_words();

[[nodiscard]] EntryFields fields_of(const WhatWasDone& what);

// Nothing where a word is not known or a number that belongs to it is missing.
[[nodiscard]] std::optional<WhatWasDone> what_is_in(const EntryFields& fields);

}  // namespace keenfall::bench
