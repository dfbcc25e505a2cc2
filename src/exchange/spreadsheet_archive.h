// The parts of a spreadsheet file (.xlsx, .ods), which is a zip archive of XML texts.
//
// In: the file's bytes. Out: parts by name, unpacked. Refused before anything is unpacked: archives
// whose parts say they unpack to more than kLargestPart, or that hold too many parts; afterwards:
// parts whose size or checksum is not what the archive says (damaged, or made to mislead), and
// parts that are not UTF-8. Source: APPNOTE.TXT, .ZIP File Format Specification, 4.3.12 to 4.3.16.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>

namespace keenfall::exchange {

class SpreadsheetArchive {
 public:
  static constexpr std::size_t kLargestPart = std::size_t{256} * 1000 * 1000;

  [[nodiscard]] static base::Result<SpreadsheetArchive> opened(std::string_view bytes);
  ~SpreadsheetArchive();
  SpreadsheetArchive(SpreadsheetArchive&& other) noexcept;
  SpreadsheetArchive& operator=(SpreadsheetArchive&& other) noexcept;
  SpreadsheetArchive(const SpreadsheetArchive&) = delete;
  SpreadsheetArchive& operator=(const SpreadsheetArchive&) = delete;

  [[nodiscard]] bool has(const std::string& part) const { return parts_.contains(part); }
  // Fails when there is no such part, or it is damaged.
  [[nodiscard]] base::Result<std::string> part(const std::string& name) const;

 private:
  struct Part {
    std::uint64_t byte_count = 0;
    std::uint32_t checksum = 0;
  };
  struct Unpacking;

  SpreadsheetArchive();

  std::map<std::string, Part> parts_;
  std::unique_ptr<Unpacking> unpacking_;
};

// What is said of a file that cannot be read to its end.
[[nodiscard]] base::Problem damaged_spreadsheet(const std::string& what);

}  // namespace keenfall::exchange
