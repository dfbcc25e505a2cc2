#include "trust/measuring/text_hash.h"

#include <fmt/format.h>

namespace keenfall::trust {

std::uint64_t text_hash(std::string_view text) {
  std::uint64_t hash = 0xcbf29ce484222325ULL;
  for (const char letter : text) {
    hash ^= static_cast<unsigned char>(letter);
    hash *= 0x100000001b3ULL;
  }
  return hash;
}

std::string text_hash_digits(std::string_view text) {
  return fmt::format("{:016x}", text_hash(text));
}

}  // namespace keenfall::trust
