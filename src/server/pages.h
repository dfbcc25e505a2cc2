// The app's pages as they were when the program was built: files in one pack, which
// web/tools/packing.js makes.
//
// The pack is a line for each file (path, type, tag, bytes, bytes when compressed; tabs between),
// an empty line, and then the files' bytes one after another, each first whole and then compressed
// with gzip.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::server {

struct PageFile {
  std::string path;  // "/index.html"
  std::string content_type;
  std::string tag;  // changes when the content does
  std::string_view whole;
  std::string_view compressed;

  bool operator==(const PageFile&) const = default;
};

// Throws std::logic_error where it is not such a pack. The files hold views of it.
[[nodiscard]] std::vector<PageFile> unpacked(std::string_view pack);

// Of this program.
[[nodiscard]] const std::vector<PageFile>& own_pages();

}  // namespace keenfall::server
