// Which notebook the app has open: those there are in its folder, opening one, making one, and
// making the demo's.
//
// A name without a folder lies in the app's folder, and a new one's ends in ".keen". Fails with a
// Problem where there is none that can be read, or something is there already; throws
// NotebookTrouble where it is damaged or the machine fails.
#pragma once

#include "base/result.h"
#include "wire/app_pages.h"
#include "wire/app_requests.h"
#include "workbench/notebook_opening.h"

#include <string>

namespace keenfall::workbench {

// Newest first, the first 200.
[[nodiscard]] wire::Notebooks notebooks_in(const std::string& folder);

struct OpenRequest {
  wire::OpenNotebook open;
  std::string folder;   // of the app
  std::string made_by;  // "keenfall 0.1.0"
};

// Out: where the notebook lies, whole.
[[nodiscard]] base::Result<std::string> notebook_to_open(const OpenRequest& request,
                                                         const Hand& hand);

}  // namespace keenfall::workbench
