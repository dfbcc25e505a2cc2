// The sources behind a reference text: collected once each, listed under it.
#pragma once

#include "cli/look.h"
#include "materials/trust.h"

#include <string>
#include <vector>

namespace keenfall::cli {

class SourceList {
 public:
  // Keeps the first of several equal keys.
  void add(const materials::Provenance& from);

  // "Sources", then a line or more for each; ends in a newline. Empty when nothing was added.
  [[nodiscard]] std::string text(const Look& look) const;

 private:
  std::vector<std::string> keys_;
};

// "s", "2", "m", "d", "g", "t", "o": for tables too narrow for the word.
[[nodiscard]] std::string mark_letter(materials::TrustMark mark);

// What the letters mean, wrapped.
[[nodiscard]] std::string mark_letters_explained(const Look& look);

}  // namespace keenfall::cli
