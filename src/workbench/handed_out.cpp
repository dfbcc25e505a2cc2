#include "workbench/handed_out.h"

#include "wire/notebook_json.h"
#include "workbench/notebook_opening.h"
#include "workbench/trial_table.h"

#include <filesystem>

namespace keenfall::workbench {

base::Result<HandedOut> handed_out(AtHand& at_hand, const HandOutRequest& request) {
  return naming_the_file(request.notebook, [&]() -> base::Result<HandedOut> {
    if (request.request.as == wire::ExportAs::csv) {
      const auto seen = at_hand.trials.checked_trial(request.notebook, request.request.trial);
      if (!seen) return base::failed(seen.error());
      const trials::Trial& trial = *(*seen)->trial;
      return HandedOut{.file_name = trial.name + ".csv", .bytes = trial_table(trial).csv};
    }
    const auto opened = opened_to_read(request.notebook);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    refuse_damage(*opened);
    return HandedOut{.file_name = std::filesystem::path(request.notebook).stem().string() + ".json",
                     .bytes = wire::notebook_to_json(*opened, request.program_version)};
  });
}

}  // namespace keenfall::workbench
