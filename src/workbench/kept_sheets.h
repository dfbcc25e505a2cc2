// The sheet that is being typed for a trial, or for a new one, kept in the open notebook
// (notebook/typed_sheets.h). Fails and throws as notebook_changes.h does.
#pragma once

#include "base/result.h"
#include "notebook/typed_sheets.h"
#include "wire/typed_sheet_json.h"
#include "workbench/notebook_opening.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::workbench {

struct SheetMeant {
  std::string notebook;
  std::string trial_uid;  // empty: of a new trial
};

[[nodiscard]] base::Result<std::optional<notebook::TypedSheet>> sheet_kept(const SheetMeant& meant);

// Out: its revision. Refused where the notebook has no such trial.
[[nodiscard]] base::Result<std::int64_t> keep_sheet(const SheetMeant& meant,
                                                    wire::SheetToKeep sheet,
                                                    const Hand& hand);

// Out: the revision that there is then.
[[nodiscard]] base::Result<std::int64_t> forget_sheet(const SheetMeant& meant,
                                                      std::int64_t revision,
                                                      const Hand& hand);

}  // namespace keenfall::workbench
