#include "workbench/app_opening.h"

#include "base/unseen_character.h"
#include "workbench/matting_bench.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_place.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstddef>
#include <ctime>
#include <filesystem>
#include <optional>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

constexpr const char* kEnding = ".keen";
constexpr const char* kDemo = "matting-bench";

std::string in_utc(std::filesystem::file_time_type when) {
  const auto seconds =
      std::chrono::time_point_cast<std::chrono::seconds>(std::chrono::file_clock::to_sys(when));
  const std::time_t time = std::chrono::system_clock::to_time_t(seconds);
  std::tm parts{};
  std::array<char, 32> text{};
  const bool is_known = gmtime_r(&time, &parts) != nullptr;
  const std::size_t length =
      is_known ? std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%SZ", &parts) : 0;
  return {text.data(), length};
}

struct NotebookFileSeen {
  std::filesystem::path path;
  std::filesystem::file_time_type changed;
};

std::vector<NotebookFileSeen> notebook_files_in(const std::filesystem::path& folder) {
  std::vector<NotebookFileSeen> files;
  std::error_code fault;
  for (std::filesystem::directory_iterator at(folder, fault), end; !fault && at != end;
       at.increment(fault)) {
    std::error_code unknown;
    if (at->path().extension() != kEnding || !at->is_regular_file(unknown)) continue;
    const auto changed = at->last_write_time(unknown);
    if (!unknown) files.push_back({.path = at->path(), .changed = changed});
  }
  return files;
}

std::filesystem::path whole_path(const std::string& given, const std::string& folder) {
  return (std::filesystem::path(folder) / given).lexically_normal();
}

std::string with_ending(const std::filesystem::path& path) {
  return path.extension() == kEnding ? path.string() : path.string() + kEnding;
}

bool has_unseen(const std::string& name) {
  for (std::size_t at = 0; at < name.size();) {
    const std::size_t bytes = base::bytes_of_character(name, at);
    const std::string_view character = std::string_view(name).substr(at, bytes);
    if (base::is_control(character) || base::turns_direction(character)) return true;
    at += bytes;
  }
  return false;
}

// Would a file of that name be found again among the others? ".keen", and "..", which is a folder.
bool is_a_name(const std::string& given) {
  std::string name = std::filesystem::path(given).filename().string();
  if (name.ends_with(kEnding)) name.resize(name.size() - std::string_view(kEnding).size());
  return name.find_first_not_of(". ") != std::string::npos;
}

base::Problem no_name(const std::string& sentence,
                      const std::string& accepted = "a name such as bench") {
  return {.kind = base::ProblemKind::bad_value,
          .sentence = sentence,
          .place = {.column = "path"},
          .accepted = accepted};
}

// Whoever writes a stroke into a name may not know that it leads into a folder.
std::optional<base::Problem> problem_of_folder(const std::filesystem::path& given,
                                               const std::string& folder) {
  std::error_code unknown;
  const std::filesystem::path there = std::filesystem::path(folder) / given.parent_path();
  if (!given.has_parent_path() || std::filesystem::is_directory(there, unknown)) {
    return std::nullopt;
  }
  return no_name("The “/” in the name leads into a folder, and there is no folder “" +
                     given.parent_path().string() + "” here.",
                 "a name without “/”, such as " + given.filename().string());
}

// Of a new one.
std::optional<base::Problem> problem_of_name(const std::string& given, const std::string& folder) {
  if (has_unseen(given)) {
    return no_name(
        "The name has a character in it that cannot be seen, such as the end of a line.");
  }
  if (!is_a_name(given)) return no_name("A notebook needs a name of its own.");
  // A file's name has 255 bytes; the notebook's ending and what lies beside it need some.
  constexpr std::size_t kLongestName = 200;
  const std::filesystem::path path(given);
  if (path.filename().string().size() > kLongestName) {
    return no_name("The name is longer than a file's may be.",
                   "200 letters at most, and fewer where they have accents");
  }
  return problem_of_folder(path, folder);
}

base::Result<std::string> made_with_demo(const std::string& path,
                                         const OpenRequest& request,
                                         const Hand& hand) {
  auto made = new_notebook(path, request.made_by, hand);
  if (!made) return made;
  const auto taken = take_made({.notebook = path,
                                .trial = matting_bench(kMattingBenchSeed),
                                .made_from = "the demo's invented readings, seed " +
                                             std::to_string(kMattingBenchSeed.number)},
                               hand);
  if (!taken) return base::failed(taken.error().front());
  return made;
}

// The first name of its kind that nothing has.
std::string free_demo_path(const std::string& folder) {
  std::string path = whole_path(kDemo, folder).string() + kEnding;
  std::error_code unknown;
  for (int number = 2; std::filesystem::exists(path, unknown); ++number) {
    path = whole_path(kDemo, folder).string() + "-" + std::to_string(number) + kEnding;
  }
  return path;
}

}  // namespace

wire::Notebooks notebooks_in(const std::string& folder) {
  constexpr std::size_t kMostListed = 200;
  auto files = notebook_files_in(folder);
  std::ranges::sort(files, std::ranges::greater(), &NotebookFileSeen::changed);
  if (files.size() > kMostListed) files.resize(kMostListed);
  wire::Notebooks notebooks{.folder = folder};
  for (const NotebookFileSeen& file : files) {
    notebooks.notebooks.push_back({.name = file.path.filename().string(),
                                   .path = file.path.string(),
                                   .changed_at_utc = in_utc(file.changed)});
  }
  return notebooks;
}

base::Result<std::string> notebook_to_open(const OpenRequest& request, const Hand& hand) {
  const std::string& given = request.open.path;
  const bool is_named_here = request.open.how == wire::OpenHow::demo && given.empty();
  if (request.open.how != wire::OpenHow::open && !is_named_here) {
    if (auto problem = problem_of_name(given, request.folder))
      return base::failed(*std::move(problem));
  }
  switch (request.open.how) {
    case wire::OpenHow::make:
      return new_notebook(with_ending(whole_path(given, request.folder)), request.made_by, hand);
    case wire::OpenHow::demo:
      return made_with_demo(given.empty() ? free_demo_path(request.folder)
                                          : with_ending(whole_path(given, request.folder)),
                            request,
                            hand);
    case wire::OpenHow::open:
      break;
  }
  if (given.find('\0') != std::string::npos) {
    return base::failed(no_name("No file has a name with that in it."));
  }
  const auto place = notebook_place(whole_path(given, request.folder).string());
  if (!place) return base::failed(place.error());
  return place->path;
}

}  // namespace keenfall::workbench
