#include "cli/judgement_text.h"

#include "base/require.h"
#include "cli/answers_text.h"
#include "cli/curve_drawing.h"
#include "cli/interval_drawing.h"
#include "cli/section_text.h"
#include "cli/table_text.h"
#include "cli/text_layout.h"
#include "telling/told.h"

#include <cstddef>

namespace keenfall::cli {

namespace {

using verdicts::Judgement;

std::string title_text(const telling::Told& told, const Look& look) {
  std::string text = wrapped(shown_as(told.title, look), {}, look);
  if (!told.details.empty()) text += wrapped(shown_as(told.details, look), {}, look);
  for (int i = 0; i < look.width; ++i) text += look.unicode ? "─" : "-";
  return text + "\n";
}

std::string one_judgement(const Judgement& judgement, HowMuch how_much, const Look& look) {
  const telling::Told told = telling::told(judgement);
  std::string text = title_text(told, look) + answers_text(told.answers, look);
  if (how_much == HowMuch::answers_only) return text;
  const auto add = [&text](const std::string& part) {
    if (!part.empty()) text += "\n" + part;
  };
  if (judgement.fit.usable) {
    add(ratios_drawn(judgement, look));
    add(curves_drawn(judgement, look));
    add(table_text(told.arms, look));
  }
  std::string before;
  for (const telling::Section& section : told.sections) {
    // The fit goes with the second opinion on it.
    if (section.id == "fit" && before == "second_opinion") {
      text += section_text(section, look);
    } else {
      add(section_text(section, look));
    }
    before = section.id;
  }
  return text;
}

}  // namespace

std::string judgements_text(const std::vector<Judgement>& judgements,
                            HowMuch how_much,
                            const Look& look) {
  base::require(!judgements.empty(), "there is at least one judgement to show");
  std::string text;
  for (std::size_t i = 0; i < judgements.size(); ++i) {
    if (i > 0) text += "\n";
    text += one_judgement(judgements[i], how_much, look);
  }
  if (judgements.size() > 1) {
    text += "\n" + wrapped(telling::kJudgedApart, {}, look);
  }
  return text;
}

}  // namespace keenfall::cli
