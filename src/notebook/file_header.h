// What the first bytes of a file say before anything is opened: is it a notebook, and whose?
// SQLite's file format, section 1.3. Private to the folder.
//
// Read by SQLite: a file that the process has open as a notebook would lose its locks if anything
// else in the process closed it (https://sqlite.org/howtocorrupt.html, section 2.2).
#pragma once

#include "base/result.h"

#include <optional>
#include <string>

namespace keenfall::notebook {

// Where the file lies, all links followed: what stands beside a notebook is named after this. The
// path itself where that cannot be told.
[[nodiscard]] std::string real_path(const std::string& path);

// The problem with opening the file as a notebook; nothing where it looks like one this program
// knows. Only reads.
[[nodiscard]] std::optional<base::Problem> problem_of_file(const std::string& path);

}  // namespace keenfall::notebook
