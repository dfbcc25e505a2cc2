#include "server/key.h"

#include "base/require.h"

#include <openssl/crypto.h>
#include <openssl/evp.h>
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

void fill_at_random(std::span<std::uint8_t> bytes) {
  if (RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) != 1) {
    throw std::runtime_error("this machine gives no random numbers to make a key of");
  }
}

}  // namespace

std::string random_key() {
  std::array<std::uint8_t, 16> bytes{};
  fill_at_random(bytes);
  return base64url(bytes);
}

std::string digest_of_key(std::string_view key) {
  std::array<std::uint8_t, 32> digest{};
  std::size_t length = digest.size();
  const int done =
      EVP_Q_digest(nullptr, "SHA256", nullptr, key.data(), key.size(), digest.data(), &length);
  base::require(done == 1, "the library has SHA-256");
  return base64url(digest);
}

std::string random_text(std::string_view letters, std::size_t length) {
  // Bytes beyond the last whole turn would make the first letters likelier.
  const std::size_t usable = 256 - 256 % letters.size();
  std::string text;
  while (text.size() < length) {
    std::array<std::uint8_t, 1> byte{};
    fill_at_random(byte);
    if (byte[0] < usable) text += letters[byte[0] % letters.size()];
  }
  return text;
}

bool is_key(std::string_view given, std::string_view key) {
  return given.size() == key.size() && CRYPTO_memcmp(given.data(), key.data(), key.size()) == 0;
}

}  // namespace keenfall::server
