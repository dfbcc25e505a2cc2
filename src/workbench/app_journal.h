// The journal of the open notebook, page by page, and taking back what stands in it.
#pragma once

#include "base/result.h"
#include "wire/app_pages.h"
#include "workbench/notebook_opening.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::workbench {

struct JournalWanted {
  std::optional<std::int64_t> before;  // only entries before this one
  std::size_t limit = 50;              // at least 1
};

[[nodiscard]] base::Result<wire::JournalPage> journal_page(const std::string& notebook,
                                                           const JournalWanted& wanted);

[[nodiscard]] base::Result<wire::Changed> undone(const std::string& notebook,
                                                 std::int64_t entry,
                                                 const Hand& hand);

}  // namespace keenfall::workbench
