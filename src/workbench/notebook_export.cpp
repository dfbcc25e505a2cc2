#include "workbench/notebook_export.h"

#include "materials/spelling.h"
#include "wire/notebook_json.h"
#include "workbench/notebook_opening.h"
#include "workbench/notebook_package.h"
#include "workbench/notebook_pages.h"
#include "workbench/plan_followed.h"
#include "workbench/trial_table.h"
#include "workbench/written_file.h"

#include <filesystem>
#include <optional>
#include <utility>

namespace keenfall::workbench {

namespace {

std::string extension_of(const std::string& path) {
  return materials::lower_case(std::filesystem::path(path).extension().string());
}

base::Result<ExportForm> form_of(const ExportRequest& request) {
  if (request.form != ExportForm::decide) return request.form;
  const std::string extension = extension_of(request.to);
  if (extension == ".csv") return ExportForm::long_table;
  if (extension == ".json") return ExportForm::json;
  if (extension.empty()) return ExportForm::data_package;
  return base::failed({.kind = base::ProblemKind::bad_value,
                       .sentence = "Nothing is exported as " + extension + ".",
                       .place = {.column = "--as", .found = request.to},
                       .accepted = "a name that ends in .csv or .json, one without an ending for a "
                                   "data package, or --as=csv, json or package"});
}

base::Result<Exported> export_table(const ExportRequest& request) {
  const auto kept = checked_trial_in(request.notebook, request.trial);
  if (!kept) return base::failed(kept.error());
  if (auto problem = problem_of_uncut(kept->trial, request.notebook)) {
    return base::failed(std::move(*problem));
  }
  const TrialTable table = trial_table(kept->trial);
  if (auto problem = write_whole_file(request.to, table.csv, Existing::is_kept)) {
    return base::failed(std::move(*problem));
  }
  return Exported{
      .form = ExportForm::long_table, .trial = kept->trial.name, .is_whole = table.is_whole};
}

base::Problem whole_notebook_only(const std::string& trial) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "--trial is for a table; as JSON or a data package the whole notebook goes.",
          .place = {.column = "--trial", .found = trial},
          .accepted = "a name that ends in .csv, or no --trial"};
}

base::Result<Exported> export_whole(const ExportRequest& request, ExportForm form) {
  if (!request.trial.empty()) return base::failed(whole_notebook_only(request.trial));
  const auto opened = opened_to_read(request.notebook);
  if (!opened) return base::failed(opened.error());
  const notebook::OneMoment moment(*opened);
  refuse_damage(*opened);
  std::optional<base::Problem> problem;
  if (form == ExportForm::json) {
    problem = write_whole_file(
        request.to, wire::notebook_to_json(*opened, request.program_version), Existing::is_kept);
  } else {
    problem = write_package(*opened, request.to, request.at_utc);
  }
  if (problem) return base::failed(std::move(*problem));
  return Exported{.form = form};
}

}  // namespace

base::Result<Exported> export_notebook(const ExportRequest& request) {
  const auto form = form_of(request);
  if (!form) return base::failed(form.error());
  return naming_the_file(request.notebook, [&] {
    return *form == ExportForm::long_table ? export_table(request) : export_whole(request, *form);
  });
}

}  // namespace keenfall::workbench
