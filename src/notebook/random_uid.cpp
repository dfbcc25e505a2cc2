#include "notebook/random_uid.h"

#include "notebook/digest.h"

#include <array>
#include <cstdint>
#include <random>

namespace keenfall::notebook {

std::string random_uid() {
  std::random_device machine;
  std::array<std::uint8_t, 16> bytes{};
  for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(machine() & 0xFFU);
  return in_hex(bytes);
}

}  // namespace keenfall::notebook
