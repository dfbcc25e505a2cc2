// What the app asks for, read from the bodies of its requests: where it cannot be used, every
// problem at once, each naming its field. Shapes: docs/wire/api.json.
#pragma once

#include "base/result.h"
#include "wire/question.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::wire {

enum class OpenHow { make, open, demo };

struct OpenNotebook {
  OpenHow how = OpenHow::open;
  std::string path;  // whole, or a name in the folder; empty only for the demo
};

struct Judging {
  bool is_quick = true;
  Question question;
};

// A reading, a checkpoint's readings, or with neither the whole run; of a reading also what it
// should have been.
struct Strike {
  std::size_t run = 0;                 // index into the trial's runs
  std::optional<std::size_t> reading;  // index into its readings
  std::optional<double> cuts;
  std::string reason;
  std::optional<double> instead;
  std::string unit;                      // of `instead`; empty: that of the reading
  std::optional<std::int64_t> of_entry;  // the journal's last when the page read the trial
};

enum class ReportFormat { html, json, csv };

struct ReportRequest {
  ReportFormat format = ReportFormat::html;
  Question question;
};

enum class ExportAs { json, csv };

struct ExportRequest {
  ExportAs as = ExportAs::json;
  std::string trial;  // uid; of a table only, and there it is needed
};

[[nodiscard]] base::ResultOrProblems<OpenNotebook> open_notebook_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<Judging> judging_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<Strike> strike_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<ReportRequest> report_request_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<ExportRequest> export_request_from(const std::string& body);
// Why something is undone; may be empty.
[[nodiscard]] base::ResultOrProblems<std::string> why_from(const std::string& body);
// What something is to be called; not blank.
[[nodiscard]] base::ResultOrProblems<std::string> name_from(const std::string& body);

}  // namespace keenfall::wire
