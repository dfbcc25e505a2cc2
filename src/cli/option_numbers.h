// Numbers that options are given, read as the whole word; a problem names the option, what was
// found and what would do.
#pragma once

#include "base/result.h"
#include "base/seed.h"

#include <cstdint>
#include <string>

namespace keenfall::cli {

[[nodiscard]] base::Result<long> whole_number_of(const std::string& option,
                                                 const std::string& text);
// With a decimal point or comma; what could be thousands ("1,000") is refused.
[[nodiscard]] base::Result<double> number_of(const std::string& option, const std::string& text);

// An edge's angle: "20", "20deg", "20°" and "20deg-per-side" are per side, "40deg-inclusive" is
// both sides together.
[[nodiscard]] base::Result<double> angle_per_side_of(const std::string& option,
                                                     const std::string& text);

[[nodiscard]] base::Result<base::Seed> seed_of(const std::string& option, const std::string& text);

// A whole number from `least` to `most`.
struct CountRange {
  long least = 0;
  long most = 0;
};
[[nodiscard]] base::Result<long> count_of(const std::string& option,
                                          const std::string& text,
                                          const CountRange& range);

// 1 to 65535.
[[nodiscard]] base::Result<std::uint16_t> port_of(const std::string& option,
                                                  const std::string& text);

// How many draws of all constants at once `--draws` asks for: enough for the middle 90 % of them.
[[nodiscard]] base::Result<int> draws_of(const std::string& text);

// 1 to 256.
[[nodiscard]] base::Result<unsigned> threads_of(const std::string& option, const std::string& text);

// The same problem with the option before it.
[[nodiscard]] base::Problem under_option(base::Problem problem, const std::string& option);

}  // namespace keenfall::cli
