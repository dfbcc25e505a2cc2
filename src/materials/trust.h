// Where a reference value comes from, and how far to trust it.
//
// Every fact in this folder's tables names a source by its key and carries a mark. A mark says how
// the number reached this table, not that the number is right: "seen" means that the text was read
// at the named place. docs/methods/materials.md lists what was not verified.
#pragma once

#include <span>
#include <string_view>

namespace keenfall::materials {

enum class TrustMark {
  seen,              // read at the named source
  seen_second_hand,  // read on a page that itself quotes another source
  from_memory,       // recalled, not read again: unverified
  derived,           // our own arithmetic from values in these tables
  guessed,           // chosen by us inside what is plausible: no source has this number
  tuned,             // chosen by us so that a model gives what practice reports
  declared           // stated by whoever uses the program, in a file of their own
};

// "seen", "second hand", "memory", "derived", "guess", "tuned", "declared".
[[nodiscard]] std::string_view in_words(TrustMark mark);

struct Provenance {
  std::string_view source_key;  // of a Source below
  TrustMark mark = TrustMark::from_memory;

  bool operator==(const Provenance&) const = default;
};

struct Source {
  std::string_view key;
  std::string_view what;     // the standard, book or page in words
  std::string_view address;  // where the number was read; empty: recalled, nothing was read

  bool operator==(const Source&) const = default;
};

[[nodiscard]] std::span<const Source> known_sources();

// By exact key; nullptr when there is none.
[[nodiscard]] const Source* find_source(std::string_view key);

}  // namespace keenfall::materials
