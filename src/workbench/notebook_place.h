// Which notebook lies at a path, and whether it may be written to.
//
// Fails with a Problem where there is none that can be read; throws NotebookTrouble where it is
// damaged or the machine fails.
#pragma once

#include "base/result.h"

#include <string>

namespace keenfall::workbench {

struct NotebookPlace {
  std::string name;  // of the file
  std::string path;  // whole
  std::string uid;
  std::string id;  // of the uid and the path: copies, which have one uid, differ in it
  bool may_write = true;
  std::string why_not = {};  // a sentence; where it may not
};

[[nodiscard]] base::Result<NotebookPlace> notebook_place(const std::string& path);

}  // namespace keenfall::workbench
