// What SQLite keeps beside a notebook while it is open: its log (-wal, or -journal while a notebook
// is made) and the log's index (-shm). Private to the folder.
#pragma once

#include <optional>
#include <string>

namespace keenfall::notebook {

// The path of the log of the file at `path` if there is something in it: changes that are not in
// the file yet, or the pages that an interrupted change leaves to be put back.
[[nodiscard]] std::optional<std::string> log_beside(const std::string& path);

}  // namespace keenfall::notebook
