#include "exchange/spreadsheet_archive.h"

#include "exchange/text_file.h"

#include <orcus/zip_archive.hpp>
#include <orcus/zip_archive_stream.hpp>

#include <array>
#include <exception>
#include <optional>
#include <utility>
#include <vector>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostParts = 10'000;
constexpr std::size_t kEndRecordSize = 22;
constexpr std::size_t kEntrySize = 46;

// `count` bytes, the lowest first.
std::uint32_t number_at(std::string_view bytes, std::size_t at, std::size_t count) {
  std::uint32_t number = 0;
  for (std::size_t i = 0; i < count; ++i) {
    number |= static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[at + i])) << (8U * i);
  }
  return number;
}

std::optional<std::size_t> end_record(std::string_view bytes) {
  if (bytes.size() < kEndRecordSize) return std::nullopt;
  const std::size_t at = bytes.rfind(std::string_view("PK\x05\x06", 4));
  if (at == bytes.npos || at + kEndRecordSize > bytes.size()) return std::nullopt;
  return at;
}

// ISO 3309, as zip archives use it (APPNOTE 4.4.7).
std::uint32_t checksum_of(std::string_view bytes) {
  static const std::array<std::uint32_t, 256> kTable = [] {
    std::array<std::uint32_t, 256> table{};
    for (std::uint32_t i = 0; i < table.size(); ++i) {
      std::uint32_t rest = i;
      for (int bit = 0; bit < 8; ++bit) {
        rest = (rest >> 1U) ^ ((rest & 1U) != 0 ? 0xEDB88320U : 0U);
      }
      table[i] = rest;
    }
    return table;
  }();
  std::uint32_t sum = 0xFFFFFFFFU;
  for (const char c : bytes) {
    sum = (sum >> 8U) ^ kTable[(sum ^ static_cast<unsigned char>(c)) & 0xFFU];
  }
  return sum ^ 0xFFFFFFFFU;
}

}  // namespace

// The library keeps pointers, so both stay where they are.
struct SpreadsheetArchive::Unpacking {
  explicit Unpacking(std::string_view bytes)
      : stream(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()),
        archive(&stream) {}

  orcus::zip_archive_stream_blob stream;
  orcus::zip_archive archive;
};

SpreadsheetArchive::SpreadsheetArchive() = default;
SpreadsheetArchive::~SpreadsheetArchive() = default;
SpreadsheetArchive::SpreadsheetArchive(SpreadsheetArchive&&) noexcept = default;
SpreadsheetArchive& SpreadsheetArchive::operator=(SpreadsheetArchive&&) noexcept = default;

base::Problem damaged_spreadsheet(const std::string& what) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "The spreadsheet file is damaged or cut short: " + what +
                      ". Open it in the spreadsheet program and save it anew.",
          .accepted = "an .xlsx or .ods file, or a CSV file saved as UTF-8 text"};
}

base::Result<SpreadsheetArchive> SpreadsheetArchive::opened(std::string_view bytes) {
  const auto end = end_record(bytes);
  if (!end) return base::failed(damaged_spreadsheet("it does not end as such a file does"));
  const std::size_t count = number_at(bytes, *end + 10, 2);
  std::size_t at = number_at(bytes, *end + 16, 4);
  if (count > kMostParts) return base::failed(damaged_spreadsheet("it has too many parts"));
  SpreadsheetArchive archive;
  for (std::size_t i = 0; i < count; ++i) {
    if (at + kEntrySize > *end || bytes.substr(at, 4) != std::string_view("PK\x01\x02", 4)) {
      return base::failed(damaged_spreadsheet("its list of parts is broken"));
    }
    const std::size_t name_size = number_at(bytes, at + 28, 2);
    const Part part{.byte_count = number_at(bytes, at + 24, 4),
                    .checksum = number_at(bytes, at + 16, 4)};
    if (at + kEntrySize + name_size > *end) {
      return base::failed(damaged_spreadsheet("its list of parts is broken"));
    }
    const std::string name(bytes.substr(at + kEntrySize, name_size));
    // The unpacking reads the part's own header again: both must agree, or a small file could
    // unpack to anything.
    if (part.byte_count > kLargestPart) {
      return base::failed(
          {.kind = base::ProblemKind::too_large,
           .sentence = "The spreadsheet would unpack to more than 256 MB; it is not opened.",
           .accepted = "a smaller spreadsheet, or one kind of reading at a time"});
    }
    archive.parts_[name] = part;
    at += kEntrySize + name_size + number_at(bytes, at + 30, 2) + number_at(bytes, at + 32, 2);
  }
  try {
    archive.unpacking_ = std::make_unique<Unpacking>(bytes);
    archive.unpacking_->archive.load();
  } catch (const std::exception&) {
    return base::failed(damaged_spreadsheet("its list of parts is broken"));
  }
  return archive;
}

base::Result<std::string> SpreadsheetArchive::part(const std::string& name) const {
  const auto known = parts_.find(name);
  if (known == parts_.end()) return base::failed(damaged_spreadsheet("it has no part " + name));
  std::vector<unsigned char> buffer;
  bool is_read = false;
  try {
    is_read = unpacking_->archive.read_file_entry(name, buffer);
  } catch (const std::exception&) {
    is_read = false;
  }
  const auto size = static_cast<std::size_t>(known->second.byte_count);
  // The library may leave a closing zero behind the part.
  if (!is_read || buffer.size() < size || buffer.size() > size + 1) {
    return base::failed(damaged_spreadsheet("its part " + name + " cannot be unpacked"));
  }
  std::string text(buffer.begin(), buffer.begin() + static_cast<std::ptrdiff_t>(size));
  if (checksum_of(text) != known->second.checksum) {
    return base::failed(damaged_spreadsheet("the checksum of its part " + name + " is wrong"));
  }
  if (!is_utf8_text(text)) {
    return base::failed(damaged_spreadsheet("its part " + name + " is not text"));
  }
  return text;
}

}  // namespace keenfall::exchange
