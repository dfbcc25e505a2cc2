#include "notebook/row_checksum.h"

#include <array>
#include <bit>
#include <cstddef>

namespace keenfall::notebook {

namespace {

std::array<std::uint8_t, 8> big_endian(std::uint64_t value) {
  std::array<std::uint8_t, 8> bytes{};
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    bytes[i] = static_cast<std::uint8_t>(value >> (8 * (7 - i)));
  }
  return bytes;
}

}  // namespace

void add_cell(Sha256& sha, const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
    sha.add("i");
    sha.add(big_endian(static_cast<std::uint64_t>(*whole)));
  } else if (const auto* real = std::get_if<double>(&cell)) {
    sha.add("r");
    sha.add(big_endian(std::bit_cast<std::uint64_t>(*real)));
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    sha.add("t");
    sha.add(big_endian(text->size()));
    sha.add(*text);
  } else {
    sha.add("n");
  }
}

void add_blob(Sha256& sha, std::string_view bytes) {
  sha.add("b");
  sha.add(big_endian(bytes.size()));
  sha.add(bytes);
}

std::int64_t RowChecksum::of(std::string_view table, std::span<const Cell> cells) {
  sha_.add(table);
  for (const Cell& cell : cells) add_cell(sha_, cell);
  const Digest digest = sha_.finish();
  std::uint64_t first = 0;
  for (std::size_t i = 0; i < 8; ++i) first = (first << 8U) | digest[i];
  return std::bit_cast<std::int64_t>(first);
}

}  // namespace keenfall::notebook
