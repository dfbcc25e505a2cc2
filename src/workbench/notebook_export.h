// A notebook's content in files that others can read: the readings of a trial as a long table, the
// whole as one JSON document, or as a data package that a notebook takes back.
//
// Strikes, voids, doubts and looks are in all of them. A file or folder that is there already is
// left alone. Fails with a Problem where the notebook cannot be opened, has no such trial, or the
// file cannot be written; throws NotebookTrouble where it is damaged: the whole of it is checked
// first, so that no copy hides what was wrong.
#pragma once

#include "base/result.h"

#include <string>

namespace keenfall::workbench {

enum class ExportForm { decide, long_table, json, data_package };

struct ExportRequest {
  std::string notebook;
  std::string to;
  ExportForm form = ExportForm::decide;  // by the name: .csv, .json, else a package's folder
  std::string trial;                     // of a long table; empty: the only one
  std::string program_version;
  std::string at_utc;
};

struct Exported {
  ExportForm form = ExportForm::long_table;
  std::string trial;     // of a long table
  bool is_whole = true;  // as TrialTable::is_whole
};

[[nodiscard]] base::Result<Exported> export_notebook(const ExportRequest& request);

}  // namespace keenfall::workbench
