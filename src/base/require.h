// A promise our own code makes to itself. Breaking it is a bug, never a person's input error.
// Throws std::logic_error in every build, so that a test can see it; nothing in the engine catches
// it.
#pragma once

#include <stdexcept>

namespace keenfall::base {

inline void require(bool condition, const char* what_must_hold) {
  if (!condition) throw std::logic_error(what_must_hold);
}

}  // namespace keenfall::base
