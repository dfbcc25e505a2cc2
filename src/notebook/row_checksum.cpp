#include "notebook/row_checksum.h"

#include <bit>
#include <cstddef>

namespace keenfall::notebook {

namespace {

void append_big_endian(std::string& bytes, std::uint64_t value) {
  for (int shift = 56; shift >= 0; shift -= 8) bytes += static_cast<char>(value >> shift);
}

}  // namespace

void append_cell(std::string& bytes, const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
    bytes += 'i';
    append_big_endian(bytes, static_cast<std::uint64_t>(*whole));
  } else if (const auto* real = std::get_if<double>(&cell)) {
    bytes += 'r';
    append_big_endian(bytes, std::bit_cast<std::uint64_t>(*real));
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    bytes += 't';
    append_big_endian(bytes, text->size());
    bytes += *text;
  } else {
    bytes += 'n';
  }
}

void append_blob(std::string& bytes, std::string_view blob) {
  bytes += 'b';
  append_big_endian(bytes, blob.size());
  bytes += blob;
}

std::int64_t RowChecksum::of(std::string_view table, std::span<const Cell> cells) {
  bytes_.assign(table);
  for (const Cell& cell : cells) append_cell(bytes_, cell);
  sha_.add(bytes_);
  const Digest digest = sha_.finish();
  std::uint64_t first = 0;
  for (std::size_t i = 0; i < 8; ++i) first = (first << 8U) | digest[i];
  return std::bit_cast<std::int64_t>(first);
}

}  // namespace keenfall::notebook
