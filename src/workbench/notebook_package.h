// A notebook as a data package: a folder of CSV files, one for each table, and a descriptor that
// says what is in them (docs/notebook-format.md). A notebook takes such a package back.
#pragma once

#include "base/result.h"
#include "notebook/content.h"
#include "notebook/notebook.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

// The folder or its descriptor, datapackage.json.
[[nodiscard]] bool is_package(const std::string& path);

// Makes the folder, whole or not at all and as of one moment; nothing where it was written.
[[nodiscard]] std::optional<base::Problem> write_package(const notebook::Notebook& notebook,
                                                         const std::string& folder,
                                                         const std::string& at_utc);

struct ReadPackage {
  std::unique_ptr<notebook::GatheredContent> content;
  std::vector<std::string> remarks;  // what is in it and was not taken
};

// Fails with every problem of its files, each with file, line and column; 200 at most.
[[nodiscard]] base::ResultOrProblems<ReadPackage> read_package(const std::string& path);

}  // namespace keenfall::workbench
