// The key of a served notebook: who has it may ask. It is made anew whenever the server starts and
// stands in the opened address behind "#", which no browser sends.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace keenfall::server {

// 128 bits by OpenSSL's generator, in base64url (RFC 4648, section 5) without "=": 22 characters.
// Throws std::runtime_error where the machine has no randomness to give.
[[nodiscard]] std::string random_key();

// What may be kept of a key, so that it can be known again: its SHA-256, as above.
[[nodiscard]] std::string digest_of_key(std::string_view key);

// That many of these letters, at most 256, each as likely as any other. Throws as random_key()
// does.
[[nodiscard]] std::string random_text(std::string_view letters, std::size_t length);

// In a time that does not tell how much of it is right.
[[nodiscard]] bool is_key(std::string_view given, std::string_view key);

}  // namespace keenfall::server
