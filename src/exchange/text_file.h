// A table's file as it lies on the disk, and the check that its bytes are text.
//
// In: a path. Out: the bytes, at most kLargestTableBytes of them. Fails with a Problem when the
// file cannot be opened, is a folder or is too large; `text_of` fails when the bytes are not UTF-8
// text (UTF-16, a spreadsheet, a picture, another code page) and says how to save them so that they
// are.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace keenfall::exchange {

// A reading needs some 30 bytes in a plain table: room for four million of them.
inline constexpr std::size_t kLargestTableBytes = std::size_t{128} * 1000 * 1000;

[[nodiscard]] base::Result<std::string> read_text_file(const std::string& path);

// The text without its byte order mark. Views into `bytes`.
[[nodiscard]] base::Result<std::string_view> text_of(std::string_view bytes,
                                                     const std::string& file_name);

// How many of the first bytes are well-formed UTF-8 (RFC 3629), whatever characters they are: all,
// or up to the first that does not belong.
[[nodiscard]] std::size_t utf8_byte_count(std::string_view bytes);

// Whether all bytes are UTF-8 without control characters.
[[nodiscard]] bool is_utf8_text(std::string_view bytes);

// The Problem for a text of `byte_count` bytes, where that is more than kLargestTableBytes.
[[nodiscard]] base::Problem too_large_problem(std::size_t byte_count, const std::string& file_name);

}  // namespace keenfall::exchange
