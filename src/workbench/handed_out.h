// The whole notebook as JSON, or a trial's readings as a table, for a file that the app hands out.
//
// The whole notebook is checked first, so that no copy hides what was wrong: fails and throws as
// notebook_export.h does.
#pragma once

#include "base/result.h"
#include "wire/app_requests.h"
#include "workbench/judged_now.h"

#include <string>

namespace keenfall::workbench {

struct HandedOut {
  std::string file_name;  // "bench.json"
  std::string bytes;
};

struct HandOutRequest {
  std::string notebook;
  wire::ExportRequest request;
  std::string program_version;
};

[[nodiscard]] base::Result<HandedOut> handed_out(AtHand& at_hand, const HandOutRequest& request);

}  // namespace keenfall::workbench
