#include "input_parts.h"

#include <algorithm>
#include <cstdint>

namespace keenfall::fuzz {

namespace {

constexpr std::string_view kMarker = "=== ";

// The next line of `input`, which is left without it.
std::string_view next_line(std::string_view& input) {
  const std::size_t end = input.find('\n');
  const std::string_view line = input.substr(0, end);
  input.remove_prefix(std::min(end, input.size() - 1) + 1);
  return line;
}

// ISO 3309, the lowest bit first.
std::uint32_t crc_of(std::string_view bytes) {
  std::uint32_t sum = 0xFFFFFFFFU;
  for (const char c : bytes) {
    sum ^= static_cast<unsigned char>(c);
    for (int bit = 0; bit < 8; ++bit) sum = (sum >> 1U) ^ ((sum & 1U) != 0 ? 0xEDB88320U : 0U);
  }
  return ~sum;
}

void append_number(std::string& bytes, std::size_t number, int count) {
  for (int i = 0; i < count; ++i, number >>= 8U) bytes += static_cast<char>(number & 0xFFU);
}

// What the local header and the central directory say of a part alike (APPNOTE 4.3.7, 4.3.12).
void append_about(std::string& bytes, const InputPart& part) {
  append_number(bytes, 20, 2);  // version needed
  append_number(bytes, 0, 8);   // flags, stored, time, date
  append_number(bytes, crc_of(part.content), 4);
  append_number(bytes, part.content.size(), 4);
  append_number(bytes, part.content.size(), 4);
  append_number(bytes, part.name.size(), 2);
  append_number(bytes, 0, 2);  // no extra field
}

}  // namespace

std::vector<InputPart> parts_of_input(std::string_view input) {
  std::vector<InputPart> parts;
  const char* begin = input.data();
  while (!input.empty()) {
    const char* const line_begin = input.data();
    const std::string_view line = next_line(input);
    if (!line.starts_with(kMarker)) continue;
    if (!parts.empty()) {
      parts.back().content = {begin, static_cast<std::size_t>(line_begin - begin)};
    }
    parts.push_back({std::string(line.substr(kMarker.size())), input});
    begin = input.data();
  }
  return parts;
}

std::vector<std::string> words_of_first_line(std::string_view& input) {
  if (input.empty()) return {};
  std::vector<std::string> words;
  std::string_view line = next_line(input);
  while (true) {
    const std::size_t bar = line.find('|');
    words.emplace_back(line.substr(0, bar));
    if (bar == std::string_view::npos) return words;
    line.remove_prefix(bar + 1);
  }
}

std::string stored_archive(const std::vector<InputPart>& parts) {
  std::string archive;
  std::string directory;
  for (const InputPart& part : parts) {
    directory += "PK\x01\x02";
    append_number(directory, 20, 2);  // version made by
    append_about(directory, part);
    append_number(directory, 0, 10);  // comment length, disk, attributes
    append_number(directory, archive.size(), 4);
    directory += part.name;
    archive += "PK\x03\x04";
    append_about(archive, part);
    archive += part.name;
    archive += part.content;
  }
  const std::size_t directory_at = archive.size();
  archive += directory;
  archive += "PK\x05\x06";
  append_number(archive, 0, 4);  // disks
  append_number(archive, parts.size(), 2);
  append_number(archive, parts.size(), 2);
  append_number(archive, directory.size(), 4);
  append_number(archive, directory_at, 4);
  append_number(archive, 0, 2);  // no comment
  return archive;
}

}  // namespace keenfall::fuzz
