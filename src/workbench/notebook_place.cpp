#include "workbench/notebook_place.h"

#include "notebook/digest.h"
#include "workbench/notebook_opening.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <system_error>

#include <unistd.h>

namespace keenfall::workbench {

namespace {

std::string id_of(const std::string& uid, const std::string& path) {
  constexpr std::size_t kDigits = 32;
  return notebook::in_hex(notebook::sha256_of(uid + "\n" + path)).substr(0, kDigits);
}

}  // namespace

base::Result<NotebookPlace> notebook_place(const std::string& path) {
  return naming_the_file(path, [&]() -> base::Result<NotebookPlace> {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    std::error_code fault;
    std::filesystem::path whole = std::filesystem::absolute(path, fault).lexically_normal();
    if (fault) whole = path;
    NotebookPlace place{
        .name = whole.filename().string(), .path = whole.string(), .uid = opened->identity().uid};
    place.id = id_of(place.uid, place.path);
    // What is written stands in a log beside the file for a while.
    place.may_write =
        access(whole.c_str(), W_OK) == 0 && access(whole.parent_path().c_str(), W_OK) == 0;
    if (!place.may_write) {
      place.why_not = "You have no right to write to " + place.name + " or to its folder.";
    }
    return place;
  });
}

}  // namespace keenfall::workbench
