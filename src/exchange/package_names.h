// What the Data Package standard (specs.frictionlessdata.io, version 1) says of names and paths in
// a descriptor.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::exchange {

// Small letters, digits, '.', '_' and '-' ("name" of a package or resource).
[[nodiscard]] bool is_package_name(std::string_view name);

// Properties of a package that the standard gives a meaning.
[[nodiscard]] bool is_standard_property(std::string_view name);

// Why the path is not that of a file in the descriptor's folder or below, as the end of a sentence
// ("leads out of the folder"): the standard allows no absolute path and no "..", and other
// computers' files (URLs) are not fetched. nullopt where it is.
[[nodiscard]] std::optional<std::string> path_fault(std::string_view path);

}  // namespace keenfall::exchange
