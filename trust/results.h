// What is known so far, as tables: one text for each, to be shown and written beside the results.
#pragma once

#include "trust/running.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::trust {

struct ResultText {
  std::string file;  // "coverage.md"
  std::string text;
};

// Of all experiments of which anything is kept.
[[nodiscard]] std::vector<ResultText> result_texts(std::span<const Running> runs);

}  // namespace keenfall::trust
