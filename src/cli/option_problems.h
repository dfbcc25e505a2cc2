// What is wrong with the options as the parser sees them. Private to this folder.
#pragma once

#include "base/result.h"

#include <CLI/CLI.hpp>

#include <string>

namespace keenfall::cli {

// With the nearest of those that are there.
[[nodiscard]] base::Problem unknown_option(const std::string& word, const CLI::App& app);

[[nodiscard]] base::Problem problem_of_parsing(const CLI::ParseError& error);

}  // namespace keenfall::cli
