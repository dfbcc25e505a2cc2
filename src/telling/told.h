// A whole judgement in words and in rounded numbers: what a terminal and a page both say of it.
//
// Values only: no width, colour, character set or markup. Texts hold names from people's files as
// they were written; whoever shows them sees to what may be shown.
#pragma once

#include "telling/answers.h"
#include "telling/section.h"
#include "telling/table.h"
#include "verdicts/judgement.h"

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::telling {

struct Told {
  std::string title;
  std::string details;  // may be empty
  Answers answers;
  Table arms;  // no columns where the fit is not usable
  // In this order, each only where there is something to say: "across_media", "factors",
  // "run_by_run", "what_else", "curve_warnings", "noticed", "cannot_say", "how_read",
  // "second_opinion", "fit". The first five only of a usable fit, the last always.
  std::vector<Section> sections;

  bool operator==(const Told&) const = default;
};

[[nodiscard]] Told told(const verdicts::Judgement& judgement);

// Said where a trial has several judgements.
inline constexpr std::string_view kJudgedApart =
    "Different kinds of reading, and different threads, are judged apart: they never share a scale "
    "or a fit.";

}  // namespace keenfall::telling
