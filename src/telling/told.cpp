#include "telling/told.h"

#include "telling/across_media_words.h"
#include "telling/arms_table.h"
#include "telling/caveats.h"
#include "telling/factor_words.h"
#include "telling/noticed_in_the_runs.h"
#include "telling/run_by_run_words.h"
#include "telling/title.h"
#include "telling/what_else_differed.h"

#include <optional>
#include <utility>

namespace keenfall::telling {

Told told(const verdicts::Judgement& judgement) {
  Told all{
      .title = title(judgement), .details = details(judgement), .answers = answers_to(judgement)};
  const auto add = [&all](std::optional<Section> section) {
    if (section) all.sections.push_back(std::move(*section));
  };
  if (judgement.fit.usable) {
    all.arms = arms_table(judgement);
    add(across_media_section(judgement));
    add(factor_section(judgement));
    add(run_by_run_section(judgement));
    add(what_else_differed(judgement));
    add(curve_warnings(judgement));
  }
  add(noticed_in_the_runs(judgement));
  add(what_cannot_be_said(judgement));
  add(how_it_was_read(judgement));
  add(second_opinion(judgement));
  add(the_fit(judgement));
  return all;
}

}  // namespace keenfall::telling
