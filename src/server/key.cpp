#include "server/key.h"

#include <openssl/crypto.h>
#include <openssl/rand.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <stdexcept>

namespace keenfall::server {

namespace {

std::string base64url(std::span<const std::uint8_t> bytes) {
  constexpr std::string_view kDigits =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  constexpr unsigned kBitsOfDigit = 6;
  constexpr unsigned kBitsOfByte = 8;
  std::string text;
  unsigned held = 0;
  unsigned held_bits = 0;
  for (const std::uint8_t byte : bytes) {
    held = (held << kBitsOfByte) | byte;
    held_bits += kBitsOfByte;
    while (held_bits >= kBitsOfDigit) {
      held_bits -= kBitsOfDigit;
      text += kDigits[(held >> held_bits) & 63U];
    }
  }
  if (held_bits > 0) text += kDigits[(held << (kBitsOfDigit - held_bits)) & 63U];
  return text;
}

}  // namespace

std::string random_key() {
  std::array<std::uint8_t, 16> bytes{};
  if (RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) != 1) {
    throw std::runtime_error("this machine gives no random numbers to make a key of");
  }
  return base64url(bytes);
}

bool is_key(std::string_view given, std::string_view key) {
  return given.size() == key.size() && CRYPTO_memcmp(given.data(), key.data(), key.size()) == 0;
}

}  // namespace keenfall::server
