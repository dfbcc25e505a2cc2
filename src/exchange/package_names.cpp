#include "exchange/package_names.h"

#include <algorithm>
#include <array>

namespace keenfall::exchange {

namespace {

constexpr std::array<std::string_view, 15> kStandardProperties = {"$schema",
                                                                  "profile",
                                                                  "name",
                                                                  "id",
                                                                  "title",
                                                                  "description",
                                                                  "homepage",
                                                                  "version",
                                                                  "licenses",
                                                                  "sources",
                                                                  "contributors",
                                                                  "keywords",
                                                                  "created",
                                                                  "image",
                                                                  "resources"};

bool is_small_letter_or_digit(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

// "https:", and "C:" too.
bool begins_with_scheme(std::string_view path) {
  const std::size_t colon = path.find(':');
  return colon != std::string_view::npos && path.find('/') > colon;
}

bool has_part(std::string_view path, std::string_view part) {
  while (true) {
    const std::size_t slash = path.find('/');
    if (path.substr(0, slash) == part) return true;
    if (slash == std::string_view::npos) return false;
    path.remove_prefix(slash + 1);
  }
}

}  // namespace

bool is_package_name(std::string_view name) {
  return !name.empty() && std::ranges::all_of(name, [](char c) {
    return is_small_letter_or_digit(c) || c == '.' || c == '_' || c == '-';
  });
}

bool is_standard_property(std::string_view name) {
  return std::ranges::find(kStandardProperties, name) != kStandardProperties.end();
}

std::optional<std::string> path_fault(std::string_view path) {
  if (path.empty()) return "is empty";
  if (std::ranges::any_of(path, [](char c) { return static_cast<unsigned char>(c) < 0x20U; })) {
    return "holds a control character";
  }
  if (begins_with_scheme(path)) return "lies on a drive or on another computer";
  if (path.starts_with('/')) return "does not begin in the package's folder";
  if (path.find('\\') != std::string_view::npos)
    return "holds a backslash, where folders are divided by “/”";
  if (has_part(path, "..")) return "may lead out of the package's folder";
  if (path.ends_with('/')) return "names a folder, not a file";
  return std::nullopt;
}

}  // namespace keenfall::exchange
