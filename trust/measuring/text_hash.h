// A number made of a text: the 64-bit FNV-1a hash (Fowler, Noll & Vo, from memory).
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace keenfall::trust {

[[nodiscard]] std::uint64_t text_hash(std::string_view text);

// The same as 16 hexadecimal digits.
[[nodiscard]] std::string text_hash_digits(std::string_view text);

}  // namespace keenfall::trust
