#include "workbench/kept_sheets.h"

#include "notebook/kept_trials.h"
#include "workbench/trials_at_hand.h"

#include <utility>

namespace keenfall::workbench {

base::Result<std::optional<notebook::TypedSheet>> sheet_kept(const SheetMeant& meant) {
  using Outcome = base::Result<std::optional<notebook::TypedSheet>>;
  return naming_the_file(meant.notebook, [&]() -> Outcome {
    const auto opened = opened_to_read(meant.notebook);
    if (!opened) return base::failed(opened.error());
    return notebook::typed_sheet(*opened, meant.trial_uid);
  });
}

base::Result<std::int64_t> keep_sheet(const SheetMeant& meant,
                                      wire::SheetToKeep sheet,
                                      const Hand& hand) {
  return naming_the_file(meant.notebook, [&]() -> base::Result<std::int64_t> {
    auto opened = opened_to_write(meant.notebook, hand);
    if (!opened) return base::failed(opened.error());
    const std::string& trial = meant.trial_uid;
    if (!trial.empty() && !notebook::trial_name_of(*opened, trial)) {
      return base::failed(no_trial_with(trial, meant.notebook));
    }
    return notebook::keep_sheet(*opened,
                                {.trial_uid = meant.trial_uid,
                                 .revision = sheet.goes_on_from,
                                 .cells = std::move(sheet.cells),
                                 .at_utc = hand.at_utc,
                                 .who = hand.who});
  });
}

base::Result<std::int64_t> forget_sheet(const SheetMeant& meant,
                                        std::int64_t revision,
                                        const Hand& hand) {
  return naming_the_file(meant.notebook, [&]() -> base::Result<std::int64_t> {
    auto opened = opened_to_write(meant.notebook, hand);
    if (!opened) return base::failed(opened.error());
    notebook::forget_sheet(*opened,
                           {.trial_uid = meant.trial_uid,
                            .revision = revision,
                            .at_utc = hand.at_utc,
                            .who = hand.who});
    const auto kept = notebook::typed_sheet(*opened, meant.trial_uid);
    return kept ? kept->revision : 0;
  });
}

}  // namespace keenfall::workbench
