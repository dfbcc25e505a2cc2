#include "notebook/file_header.h"

#include "notebook/notebook.h"
#include "notebook/notebook_file.h"
#include "notebook/open_file.h"
#include "notebook/schema.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <filesystem>
#include <span>
#include <string_view>
#include <system_error>

namespace keenfall::notebook {

namespace {

using Header = std::array<unsigned char, 100>;

constexpr std::string_view kMagic("SQLite format 3\0", 16);

bool begins_with_magic(const Header& header) {
  return std::ranges::equal(
      kMagic, std::span(header).first(kMagic.size()), [](char one, unsigned char other) {
        return static_cast<unsigned char>(one) == other;
      });
}

// Opening takes no lock and makes no file. Throws SQLite's exception where it cannot be read.
Header header_of(const std::string& path) {
  SQLite::Database database(real_path(path), SQLite::OPEN_READONLY);
  sqlite3_file& file = file_under(database);
  Header header{};
  database.check(file.pMethods->xRead(&file, header.data(), int(header.size()), 0));
  return header;
}

std::int64_t number_at(const Header& header, std::size_t place, std::size_t bytes) {
  std::int64_t number = 0;
  for (std::size_t i = 0; i < bytes; ++i) number = number * 256 + header.at(place + i);
  return number;
}

base::Problem unreadable(const std::string& path,
                         const std::string& sentence,
                         const std::string& accepted) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = sentence,
          .place = {.file = path},
          .accepted = accepted};
}

bool is_too_short(const struct stat& about) { return about.st_size < off_t(Header{}.size()); }

bool has_something_in_it(const std::string& path) {
  struct stat about {};
  return stat(path.c_str(), &about) == 0 && about.st_size > 0;
}

// A notebook is made, and a copy is, beside a rollback journal that goes away at the end.
base::Problem interrupted(const std::string& path) {
  return unreadable(path,
                    "There is nothing in this file: its making was interrupted, or it was emptied.",
                    "a backup; or, if nothing was in it yet, deleting it and making it again");
}

// A log beside the file may hold the pages that it lacks: folding it in was interrupted then, and
// goes on when the file is opened.
std::optional<base::Problem> problem_of_header(const std::string& path,
                                               const Header& header,
                                               std::int64_t file_size) {
  const bool is_unfinished = has_something_in_it(real_path(path) + "-journal");
  if (!begins_with_magic(header)) {
    if (is_unfinished) return interrupted(path);
    return unreadable(path,
                      "This is not a notebook.",
                      "a notebook made by keenfall new; tables go to keenfall judge or take");
  }
  if (number_at(header, 68, 4) != kApplicationId) {
    return unreadable(path, "This is a database of another program, not a notebook.", "a notebook");
  }
  const std::int64_t version = number_at(header, 60, 4);
  if (version > kSchemaVersion) {
    return unreadable(path,
                      "This notebook was written by a newer Keenfall (format " +
                          std::to_string(version) + "; this one knows up to " +
                          std::to_string(kSchemaVersion) + "). It was left as it is.",
                      "a newer Keenfall");
  }
  const std::int64_t page_size = number_at(header, 16, 2);
  if (number_at(header, 28, 4) * (page_size == 1 ? 65536 : page_size) > file_size &&
      !has_something_in_it(real_path(path) + "-wal")) {
    if (is_unfinished) return interrupted(path);
    return unreadable(path,
                      "This notebook is cut short: the end of the file is missing.",
                      "a whole copy, for example the last backup");
  }
  return std::nullopt;
}

}  // namespace

std::string real_path(const std::string& path) {
  std::error_code fault;
  const auto real = std::filesystem::canonical(path, fault);
  return fault ? path : real.string();
}

bool begins_as_notebook(const std::string& path) {
  struct stat about {};
  if (stat(path.c_str(), &about) != 0 || !S_ISREG(about.st_mode) || is_too_short(about)) {
    return false;  // and what is no file, as a pipe, is left unread to whom it is meant for
  }
  try {
    return begins_with_magic(header_of(path));
  } catch (const SQLite::Exception&) {
    return false;
  }
}

std::optional<base::Problem> problem_of_file(const std::string& path) {
  struct stat about {};
  if (stat(path.c_str(), &about) != 0) {
    return unreadable(
        path,
        errno == ENOENT
            ? "There is no such notebook."
            : "The notebook cannot be read: " + std::generic_category().message(errno) + ".",
        "keenfall new makes one");
  }
  if (!S_ISREG(about.st_mode)) {
    return unreadable(path, "A notebook is a file, and this is none.", "a notebook");
  }
  if (about.st_size == 0) return interrupted(path);
  if (access(path.c_str(), R_OK) != 0) {
    return unreadable(path, "The notebook cannot be read.", "a file that may be read");
  }
  if (is_too_short(about)) {
    return unreadable(path, "This is not a notebook: the file is too short.", "a notebook");
  }
  return carrying_over([&] { return problem_of_header(path, header_of(path), about.st_size); });
}

}  // namespace keenfall::notebook
