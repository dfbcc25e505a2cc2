// Numbers that options are given, read as the whole word; a problem names the option, what was
// found and what would do.
#pragma once

#include "base/result.h"
#include "base/seed.h"

#include <string>

namespace keenfall::cli {

[[nodiscard]] base::Result<long> whole_number_of(const std::string& option,
                                                 const std::string& text);
[[nodiscard]] base::Result<double> number_of(const std::string& option, const std::string& text);
[[nodiscard]] base::Result<base::Seed> seed_of(const std::string& option, const std::string& text);

// A whole number from `least` to `most`.
struct CountRange {
  long least = 0;
  long most = 0;
};
[[nodiscard]] base::Result<long> count_of(const std::string& option,
                                          const std::string& text,
                                          const CountRange& range);

// 1 to 256.
[[nodiscard]] base::Result<unsigned> threads_of(const std::string& option, const std::string& text);

}  // namespace keenfall::cli
