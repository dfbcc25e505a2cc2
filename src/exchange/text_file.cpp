#include "exchange/text_file.h"

#include "exchange/text_lines.h"

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <optional>
#include <system_error>

namespace keenfall::exchange {

namespace {

constexpr const char* kSaveAsText = "an .xlsx or .ods file, or a CSV file saved as UTF-8 text";

base::Problem unreadable(const std::string& file_name, std::string sentence) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = std::move(sentence),
          .place = {.file = file_name}};
}

base::Problem not_text(const std::string& file_name, std::string sentence) {
  base::Problem problem = unreadable(file_name, std::move(sentence));
  problem.accepted = kSaveAsText;
  return problem;
}

std::string megabytes(std::size_t byte_count) {
  return std::to_string((byte_count + 999'999) / 1'000'000) + " MB";
}

bool starts_with_bytes(std::string_view bytes, std::string_view first) {
  return bytes.substr(0, first.size()) == first;
}

// Every second byte of UTF-16 is NUL where the letters are Latin: half of the first bytes tell it.
bool looks_like_utf16(std::string_view bytes) {
  if (starts_with_bytes(bytes, "\xFF\xFE") || starts_with_bytes(bytes, "\xFE\xFF")) return true;
  const std::string_view head = bytes.substr(0, 64);
  std::size_t even_nuls = 0;
  std::size_t odd_nuls = 0;
  for (std::size_t i = 0; i < head.size(); ++i) {
    if (head[i] == '\0') ++(i % 2 == 0 ? even_nuls : odd_nuls);
  }
  const std::size_t most = head.size() / 2;
  return most >= 4 &&
         ((even_nuls == 0 && odd_nuls * 2 > most) || (odd_nuls == 0 && even_nuls * 2 > most));
}

std::optional<std::string> known_other_format(std::string_view bytes) {
  if (starts_with_bytes(bytes, "\xD0\xCF\x11\xE0")) {
    // UTF-16 letters: a protected new file lies within the old format.
    constexpr std::string_view kProtected("E\0n\0c\0r\0y\0p\0t\0e\0d\0P\0a\0c\0k\0a\0g\0e", 31);
    if (bytes.find(kProtected) != bytes.npos) {
      return "The spreadsheet is protected by a password. Save it without one.";
    }
    return "This is a spreadsheet in the old binary format (.xls), which is not read: open it in "
           "the spreadsheet program and save it as .xlsx or .ods.";
  }
  if (looks_like_utf16(bytes)) {
    return "The text is stored as UTF-16, which is not read: save it again and choose UTF-8 "
           "(\"CSV UTF-8\" in a spreadsheet program).";
  }
  if (starts_with_bytes(bytes, "%PDF") || starts_with_bytes(bytes, "\x1F\x8B") ||
      starts_with_bytes(bytes, "\x89PNG") || starts_with_bytes(bytes, "\xFF\xD8\xFF")) {
    return "This is not a table but a document, a picture or a compressed file.";
  }
  return std::nullopt;
}

bool is_forbidden_control(unsigned char byte) {
  return (byte < 0x20 && byte != '\t' && byte != '\n' && byte != '\r') || byte == 0x7F;
}

// Bytes of the well-formed UTF-8 sequence at `at` (RFC 3629, section 4), 0 if there is none.
std::size_t sequence_length(std::string_view bytes, std::size_t at) {
  const auto byte = [&bytes](std::size_t i) {
    return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U;
  };
  const auto continues = [&byte](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  const unsigned first = byte(at);
  const unsigned second = byte(at + 1);
  if (first < 0x80U) return 1;
  if (first >= 0xC2U && first <= 0xDFU) return continues(at + 1) ? 2 : 0;
  if (first >= 0xE0U && first <= 0xEFU) {
    const bool too_long = first == 0xE0U && second < 0xA0U;
    const bool surrogate = first == 0xEDU && second > 0x9FU;
    return !too_long && !surrogate && continues(at + 1) && continues(at + 2) ? 3 : 0;
  }
  if (first >= 0xF0U && first <= 0xF4U) {
    const bool too_long = first == 0xF0U && second < 0x90U;
    const bool too_large = first == 0xF4U && second > 0x8FU;
    const bool whole = continues(at + 1) && continues(at + 2) && continues(at + 3);
    return !too_long && !too_large && whole ? 4 : 0;
  }
  return 0;
}

std::string hexadecimal(unsigned char byte) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  return std::string("0x") + kDigits[byte / 16U] + kDigits[byte % 16U];
}

std::optional<base::Problem> first_bad_byte(std::string_view bytes, const std::string& file_name) {
  for (std::size_t at = 0; at < bytes.size();) {
    const auto byte = static_cast<unsigned char>(bytes[at]);
    const bool is_control = is_forbidden_control(byte);
    const std::size_t length = is_control ? 0 : sequence_length(bytes, at);
    if (length > 0) {
      at += length;
      continue;
    }
    const std::string what =
        is_control ? "The file holds the control character " + hexadecimal(byte) +
                         ", which no table has: it is not text, or it is damaged."
                   : "The byte " + hexadecimal(byte) +
                         " does not belong in UTF-8 text: the file was saved in another code page "
                         "(or is damaged). Save it again and choose UTF-8.";
    base::Problem problem = not_text(file_name, what);
    problem.place.line = line_at(bytes, at);
    return problem;
  }
  return std::nullopt;
}

}  // namespace

std::size_t utf8_byte_count(std::string_view bytes) {
  std::size_t at = 0;
  while (at < bytes.size()) {
    const std::size_t length = sequence_length(bytes, at);
    if (length == 0) break;
    at += length;
  }
  return at;
}

bool is_utf8_text(std::string_view bytes) { return !first_bad_byte(bytes, ""); }

base::Problem too_large_problem(std::size_t byte_count, const std::string& file_name) {
  return {.kind = base::ProblemKind::too_large,
          .sentence = "The table is " + megabytes(byte_count) + " large; at most " +
                      megabytes(kLargestTableBytes) + " are taken in.",
          .place = {.file = file_name},
          .accepted = "a smaller table, or one kind of reading at a time"};
}

base::Result<std::string> read_text_file(const std::string& path) {
  std::error_code failure;
  const auto status = std::filesystem::status(path, failure);
  if (status.type() == std::filesystem::file_type::not_found) {
    return base::failed(unreadable(path, "There is no such file."));
  }
  if (std::filesystem::is_directory(status)) {
    return base::failed(unreadable(path, "This is a folder, not a table: name the file in it."));
  }
  if (std::filesystem::is_regular_file(status)) {
    const auto byte_count = std::filesystem::file_size(path, failure);
    if (!failure && byte_count > kLargestTableBytes) {
      return base::failed(too_large_problem(byte_count, path));
    }
  }
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    const std::string reason = std::error_code(errno, std::generic_category()).message();
    return base::failed(unreadable(path, "The file cannot be opened: " + reason + "."));
  }
  std::string bytes;
  std::string piece(std::size_t{1} << 16U, '\0');
  while (file.read(piece.data(), static_cast<std::streamsize>(piece.size())) || file.gcount() > 0) {
    bytes.append(piece, 0, static_cast<std::size_t>(file.gcount()));
    if (bytes.size() > kLargestTableBytes) {
      return base::failed(too_large_problem(bytes.size(), path));
    }
  }
  if (file.bad()) return base::failed(unreadable(path, "The file could not be read to its end."));
  return bytes;
}

base::Result<std::string_view> text_of(std::string_view bytes, const std::string& file_name) {
  if (bytes.size() > kLargestTableBytes) {
    return base::failed(too_large_problem(bytes.size(), file_name));
  }
  if (const auto other_format = known_other_format(bytes)) {
    return base::failed(not_text(file_name, *other_format));
  }
  if (starts_with_bytes(bytes, "\xEF\xBB\xBF")) bytes.remove_prefix(3);
  if (auto problem = first_bad_byte(bytes, file_name)) return base::failed(std::move(*problem));
  return bytes;
}

}  // namespace keenfall::exchange
