#include "scale/serial_devices.h"

#include <algorithm>
#include <filesystem>
#include <set>
#include <string_view>
#include <system_error>

namespace keenfall::scale {

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> entries_of(const fs::path& folder) {
  std::error_code fault;
  std::vector<fs::path> entries;
  for (fs::directory_iterator entry(folder, fault), end; !fault && entry != end;
       entry.increment(fault)) {
    entries.push_back(entry->path());
  }
  std::ranges::sort(entries);
  return entries;
}

bool is_usb_line(const fs::path& path) {
  const std::string name = path.filename().string();
  return name.starts_with("ttyUSB") || name.starts_with("ttyACM");
}

}  // namespace

std::vector<std::string> serial_devices(const std::string& folder) {
  std::vector<std::string> devices;
  std::set<fs::path> named;
  for (const fs::path& path : entries_of(fs::path(folder) / "serial" / "by-id")) {
    std::error_code fault;
    named.insert(fs::canonical(path, fault));
    if (!fault) devices.push_back(path.string());
  }
  for (const fs::path& path : entries_of(folder)) {
    std::error_code fault;
    const bool is_new = !named.contains(fs::canonical(path, fault));
    if (is_usb_line(path) && is_new) devices.push_back(path.string());
  }
  return devices;
}

}  // namespace keenfall::scale
