#include "server/meant_notebook.h"

#include "server/answers.h"
#include "wire/problems_json.h"
#include "workbench/notebook_place.h"

#include <filesystem>
#include <optional>
#include <string_view>

namespace keenfall::server {

namespace {

HttpResponse another_is_open(const std::optional<std::string>& path) {
  constexpr int kConflict = 409;
  const std::string what = path ? "Another notebook is open in Keenfall now, " +
                                      std::filesystem::path(*path).filename().string() + "."
                                : "No notebook is open in Keenfall any more.";
  return json_answer(
      wire::refusal_to_json("another_notebook",
                            what + " What was meant for the one before was not done."),
      kConflict);
}

base::Problem does_not_say_which() {
  return {.kind = base::ProblemKind::missing,
          .sentence = "A change has to say which notebook it is meant for.",
          .place = {.column = "X-Keenfall-Notebook"},
          .accepted = "the id of the open notebook, as /api/v1/app tells it"};
}

}  // namespace

PathOrRefused notebook_to_read(const workbench::OpenApp& open, const HttpRequest& request) {
  const std::string_view meant = header_of(request, "x-keenfall-notebook");
  auto path = open.notebook();
  if (meant.empty()) {
    if (!path) return tl::unexpected(problem_answer(path.error()));
    return *std::move(path);
  }
  if (!path) return tl::unexpected(another_is_open(std::nullopt));
  // One that cannot be read is neither read nor changed by whoever is answered, who says why.
  const auto place = workbench::notebook_place(*path);
  if (place && place->id != meant) return tl::unexpected(another_is_open(*path));
  return *std::move(path);
}

PathOrRefused notebook_to_change(const workbench::OpenApp& open, const HttpRequest& request) {
  auto path = notebook_to_read(open, request);
  if (path && header_of(request, "x-keenfall-notebook").empty()) {
    return tl::unexpected(problem_answer(does_not_say_which()));
  }
  return path;
}

PathOrRefused notebook_if_open(const workbench::OpenApp& open, const HttpRequest& request) {
  if (!open.notebook() && header_of(request, "x-keenfall-notebook").empty()) return std::string();
  return notebook_to_read(open, request);
}

}  // namespace keenfall::server
