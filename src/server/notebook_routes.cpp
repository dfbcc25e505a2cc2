// The routes of the open notebook: which it is, its first page, its journal, looking for words in
// it.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/meant_notebook.h"
#include "wire/app_json.h"
#include "wire/app_requests.h"
#include "workbench/app_home.h"
#include "workbench/app_journal.h"
#include "workbench/app_opening.h"
#include "workbench/found_words.h"
#include "workbench/taken_back.h"

#include <charconv>
#include <cstdint>
#include <optional>
#include <string>
#include <system_error>

namespace keenfall::server {

namespace {

std::optional<std::int64_t> number_above_zero(const std::string& text) {
  std::int64_t number = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, fault] = std::from_chars(text.data(), end, number);
  if (fault != std::errc() || stop != end || number < 1) return std::nullopt;
  return number;
}

base::Problem no_number(const std::string& name, const std::string& text) {
  return {.kind = base::ProblemKind::bad_value,
          .sentence = "“" + name + "” is a number of entries of the journal.",
          .place = {.column = name, .found = text},
          .accepted = "a whole number above 0"};
}

HttpResponse opened(workbench::OpenApp& open, const HttpRequest& request) {
  const auto asked = wire::open_notebook_from(request.body);
  if (!asked) return problems_answer(asked.error());
  const auto path =
      workbench::notebook_to_open({.open = *asked,
                                   .folder = open.settings().folder,
                                   .made_by = "keenfall " + open.settings().program_version},
                                  open.hand(request.came_at));
  if (!path) return problem_answer(path.error());
  open.open(*path);
  return json_answer(wire::app_to_json(open.told()));
}

HttpResponse journal(workbench::OpenApp& open, const HttpRequest& request) {
  const auto path = notebook_to_read(open, request);
  if (!path) return path.error();
  constexpr std::int64_t kMostAtOnce = 1000;
  workbench::JournalWanted wanted;
  if (const auto before = queried(request, "before")) {
    wanted.before = number_above_zero(*before);
    if (!wanted.before) return problem_answer(no_number("before", *before));
  }
  if (const auto limit = queried(request, "limit")) {
    const auto number = number_above_zero(*limit);
    if (!number || *number > kMostAtOnce) return problem_answer(no_number("limit", *limit));
    wanted.limit = static_cast<std::size_t>(*number);
  }
  return encoded(workbench::journal_page(*path, wanted), wire::journal_to_json);
}

HttpResponse undone(workbench::OpenApp& open,
                    const std::string& notebook,
                    const HttpRequest& request,
                    std::int64_t entry) {
  const auto why = wire::why_from(request.body);
  if (!why) return problems_answer(why.error());
  return encoded(workbench::undone(notebook, entry, open.hand(request.came_at, *why)),
                 wire::changed_to_json);
}

HttpResponse taken_back(workbench::OpenApp& open,
                        const std::string& notebook,
                        const HttpRequest& request,
                        std::int64_t entry) {
  const auto why = wire::why_from(request.body);
  if (!why) return problems_answer(why.error());
  return encoded(workbench::taken_back(notebook, entry, open.hand(request.came_at, *why)),
                 wire::taken_back_to_json);
}

}  // namespace

void add_notebook_routes(const AppParts& parts) {
  workbench::OpenApp& open = parts.open;
  Routes& routes = parts.routes;
  routes.add("GET", "/api/v1/app", [&open](const HttpRequest&, const PathParameters&) {
    return json_answer(wire::app_to_json(open.told()));
  });
  routes.add("GET", "/api/v1/notebooks", [&open](const HttpRequest&, const PathParameters&) {
    return json_answer(wire::notebooks_to_json(workbench::notebooks_in(open.settings().folder)));
  });
  routes.add(
      "POST", "/api/v1/notebooks", [&open](const HttpRequest& request, const PathParameters&) {
        return opened(open, request);
      });
  routes.add("GET", "/api/v1/home", [&open](const HttpRequest& request, const PathParameters&) {
    const auto path = notebook_to_read(open, request);
    if (!path) return path.error();
    return encoded(workbench::home_of(open.at_hand(), *path), wire::home_to_json);
  });
  routes.add("GET", "/api/v1/search", [&open](const HttpRequest& request, const PathParameters&) {
    const auto path = notebook_to_read(open, request);
    if (!path) return path.error();
    return encoded(
        workbench::found_words(open.at_hand(), *path, queried(request, "text").value_or("")),
        wire::found_to_json);
  });
  routes.add("GET", "/api/v1/journal", [&open](const HttpRequest& request, const PathParameters&) {
    return journal(open, request);
  });
  using Answer = HttpResponse (*)(workbench::OpenApp&,
                                  const std::string& notebook,
                                  const HttpRequest& request,
                                  std::int64_t entry);
  const auto add_change_of_entry = [&](const std::string& path, Answer answer) {
    routes.add("POST",
               "/api/v1/journal/{entry}/" + path,
               [&open, answer](const HttpRequest& request, const PathParameters& parameters) {
                 const auto notebook = notebook_to_change(open, request);
                 if (!notebook) return notebook.error();
                 const auto entry = number_above_zero(parameters.at("entry"));
                 if (!entry) return not_found("The journal has no entry of that number.");
                 return answer(open, *notebook, request, *entry);
               });
  };
  add_change_of_entry("undo", undone);
  add_change_of_entry("take-back", taken_back);
}

}  // namespace keenfall::server
