// SHA-256 (FIPS 180-4), by OpenSSL: of tables taken in, of rows, of the journal's chain.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>

namespace keenfall::notebook {

using Digest = std::array<std::uint8_t, 32>;

class Sha256 {
 public:
  Sha256();
  ~Sha256();
  Sha256(const Sha256&) = delete;
  Sha256& operator=(const Sha256&) = delete;
  Sha256(Sha256&&) = delete;
  Sha256& operator=(Sha256&&) = delete;

  void add(std::span<const std::uint8_t> bytes);
  void add(std::string_view bytes);
  // Of all that was added; afterwards it is as new.
  [[nodiscard]] Digest finish();

 private:
  struct Context;

  void begin();

  std::unique_ptr<Context> context_;
};

[[nodiscard]] Digest sha256_of(std::string_view bytes);

// In hexadecimal, small letters.
[[nodiscard]] std::string in_hex(std::span<const std::uint8_t> bytes);

}  // namespace keenfall::notebook
