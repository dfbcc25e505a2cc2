// An answer in words and as JSON, and which of the two goes where.
#pragma once

#include "cli/outcome.h"

#include <optional>
#include <string>

namespace keenfall::cli {

struct WrittenAnswer {
  std::string text;
  std::string json;
};

// `json_to`: nothing was asked for (the text goes out); empty (the JSON goes out alone); or a file
// beside the text. A file that cannot be written is said, with exit code 4.
[[nodiscard]] Outcome delivered(const WrittenAnswer& answer,
                                const std::optional<std::string>& json_to);

}  // namespace keenfall::cli
