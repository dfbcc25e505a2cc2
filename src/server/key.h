// The key of a served notebook: who has it may ask. It is made anew whenever the server starts and
// stands in the opened address behind "#", which no browser sends.
#pragma once

#include <string>
#include <string_view>

namespace keenfall::server {

// 128 bits by OpenSSL's generator, in base64url (RFC 4648, section 5) without "=": 22 characters.
// Throws std::runtime_error where the machine has no randomness to give.
[[nodiscard]] std::string random_key();

// In a time that does not tell how much of it is right.
[[nodiscard]] bool is_key(std::string_view given, std::string_view key);

}  // namespace keenfall::server
