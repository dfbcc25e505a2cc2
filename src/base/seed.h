// The number that makes a random computation repeatable; stored with every result it made.
#pragma once

#include <cstdint>

namespace keenfall::base {

struct Seed {
  std::uint64_t number = 1;

  bool operator==(const Seed&) const = default;
};

}  // namespace keenfall::base
