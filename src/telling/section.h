// One part of what is told beside the answers: a heading, perhaps a sentence that leads to the
// items, and the items.
#pragma once

#include "telling/sentence.h"

#include <string>
#include <vector>

namespace keenfall::telling {

// What becomes of a list of items where there is no room for a long one.
enum class WhenLong {
  cut_short,  // its first items stay
  left_out,   // all go: a part would mislead
  kept        // it is never long
};

struct Section {
  std::string id;       // "what_else": the same in every judgement
  std::string heading;  // a few words
  Sentence lead;        // says what the heading says and more; no words: the heading is enough
  std::vector<Sentence> items;
  WhenLong when_long = WhenLong::cut_short;
  std::vector<Sentence> remarks;  // on the items; said also where those are cut short

  bool operator==(const Section&) const = default;
};

}  // namespace keenfall::telling
