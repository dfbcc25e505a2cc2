#include "server/pages.h"

#include "base/require.h"
#include "page/embedded_file.h"

#include <array>
#include <charconv>
#include <cstddef>

KEENFALL_EMBED(keenfall_app_pages, KEENFALL_APP_PACK)

namespace keenfall::server {

namespace {

constexpr const char* kIsWellMade = "the pages are packed as web/tools/packing.js packs them";

// What stands before the mark, which is taken away too.
std::string_view cut_off(std::string_view& rest, char mark) {
  const std::size_t end = rest.find(mark);
  base::require(end != std::string_view::npos, kIsWellMade);
  const std::string_view before = rest.substr(0, end);
  rest.remove_prefix(end + 1);
  return before;
}

std::size_t number_in(std::string_view digits) {
  std::size_t number = 0;
  const auto [at, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  const bool is_number = fault == std::errc() && at == digits.data() + digits.size();
  base::require(is_number, kIsWellMade);
  return number;
}

std::string_view bytes_off(std::string_view& rest, std::size_t count) {
  base::require(count <= rest.size(), kIsWellMade);
  const std::string_view bytes = rest.substr(0, count);
  rest.remove_prefix(count);
  return bytes;
}

struct Lengths {
  std::size_t whole = 0;
  std::size_t compressed = 0;
};

}  // namespace

std::vector<PageFile> unpacked(std::string_view pack) {
  std::vector<PageFile> files;
  std::vector<Lengths> lengths;
  for (std::string_view line = cut_off(pack, '\n'); !line.empty(); line = cut_off(pack, '\n')) {
    PageFile file;
    file.path = cut_off(line, '\t');
    file.content_type = cut_off(line, '\t');
    file.tag = cut_off(line, '\t');
    const std::size_t whole = number_in(cut_off(line, '\t'));
    files.push_back(std::move(file));
    lengths.push_back({.whole = whole, .compressed = number_in(line)});
  }
  for (std::size_t i = 0; i < files.size(); ++i) {
    files[i].whole = bytes_off(pack, lengths[i].whole);
    files[i].compressed = bytes_off(pack, lengths[i].compressed);
  }
  base::require(pack.empty(), kIsWellMade);
  return files;
}

const std::vector<PageFile>& own_pages() {
  static const std::vector<PageFile> files =
      unpacked(page::embedded_between(keenfall_app_pages_begin, keenfall_app_pages_end));
  return files;
}

}  // namespace keenfall::server
