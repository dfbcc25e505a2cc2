#include "cli/tell_request.h"

#include "materials/spelling.h"

#include <array>
#include <filesystem>
#include <optional>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

using base::Problem;
using base::ProblemKind;

struct KnownFormat {
  const char* name;
  ReportFormat format;
};

constexpr std::array<KnownFormat, 4> kFormats = {{
    {"html", ReportFormat::html},
    {"htm", ReportFormat::html},
    {"json", ReportFormat::json},
    {"csv", ReportFormat::csv},
}};

std::optional<ReportFormat> format_named(const std::string& name) {
  for (const KnownFormat& known : kFormats) {
    if (known.name == materials::lower_case(name)) return known.format;
  }
  return std::nullopt;
}

base::Result<ReportFormat> format_wanted(const TypedOptions& typed) {
  if (typed.format) {
    if (const auto format = format_named(*typed.format)) return *format;
    return base::failed(
        {.kind = ProblemKind::bad_value,
         .sentence = "--format is html, json or csv, not \"" + *typed.format + "\".",
         .place = {.column = "--format", .found = *typed.format}});
  }
  if (!typed.out) {
    return base::failed({.kind = ProblemKind::missing,
                         .sentence = "Say where the report goes: --out=report.html writes a file, "
                                     "--format=html writes to standard output.",
                         .place = {.column = "--out"}});
  }
  const std::string ending = std::filesystem::path(*typed.out).extension().string();
  if (const auto format = format_named(ending.empty() ? ending : ending.substr(1))) return *format;
  return base::failed(
      {.kind = ProblemKind::bad_value,
       .sentence = ending.empty() ? "\"" + *typed.out + "\" has no ending that says what to write."
                                  : "Nothing is told as " + ending + ".",
       .place = {.column = "--out", .found = *typed.out},
       .accepted = "a name that ends in .html, .json or .csv, or --format=html, json or csv"});
}

}  // namespace

base::ResultOrProblems<TellRequest> tell_request(const TypedOptions& typed,
                                                 unsigned threads_at_hand) {
  TellRequest request{.out = typed.out.value_or("")};
  std::vector<Problem> problems;
  auto judging = judge_request(typed, threads_at_hand);
  if (judging) {
    request.judging = std::move(*judging);
  } else {
    problems = std::move(judging.error());
  }
  const auto format = format_wanted(typed);
  if (format) {
    request.format = *format;
  } else {
    problems.push_back(format.error());
  }
  if (typed.positionals.empty()) {
    problems.push_back(
        {.kind = ProblemKind::missing,
         .sentence = "There is nothing to tell of. Name a table or a notebook: keenfall tell "
                     "bench.keen --out=report.html",
         .place = {.column = "--"}});
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return request;
}

}  // namespace keenfall::cli
