#include "cli/judgement_text.h"

#include "base/require.h"
#include "cli/across_media_text.h"
#include "cli/answer_sentences.h"
#include "cli/arms_table.h"
#include "cli/caveats.h"
#include "cli/curve_drawing.h"
#include "cli/factor_text.h"
#include "cli/interval_drawing.h"
#include "cli/run_by_run_text.h"
#include "cli/text_layout.h"

#include <fmt/format.h>
#include <cctype>
#include <cstddef>
#include <set>

namespace keenfall::cli {

namespace {

using verdicts::Judgement;

std::string begun_large(std::string words) {
  if (!words.empty()) {
    words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  }
  return words;
}

// The way of cutting, where it is one for all arms (else each medium's heading names it).
std::string common_method_words(const Judgement& judgement) {
  std::set<std::string> methods;
  for (const auto& arm : judgement.arms) methods.insert(in_words(arm.arm.method));
  return methods.size() == 1 ? *methods.begin() : std::string();
}

// "Thread push reading, gf; 36 runs", then the thread and the way of cutting where they are known.
std::string title(const Judgement& judgement, const Look& look) {
  std::string words =
      begun_large(judgement.kind.words.empty() ? judgement.kind.name : judgement.kind.words);
  words += ", " + judgement.unit;
  int runs = 0;
  for (const auto& arm : judgement.arms) runs += arm.runs;
  words += runs == 1 ? "; 1 run" : fmt::format("; {} runs", runs);
  std::string details;
  if (!judgement.thread.empty()) details = "Thread: " + judgement.thread + ". ";
  const std::string method = common_method_words(judgement);
  if (!method.empty()) details += "Cut: " + method + ".";
  std::string shown = wrapped(shown_as(words, look), {}, look);
  if (!details.empty()) shown += wrapped(shown_as(details, look), {}, look);
  std::string rule;
  for (int i = 0; i < look.width; ++i) rule += look.unicode ? "─" : "-";
  return shown + rule + "\n";
}

std::string one_judgement(const Judgement& judgement, HowMuch how_much, const Look& look) {
  std::string text = title(judgement, look) + answers_text(judgement, look);
  if (how_much == HowMuch::answers_only) return text;
  const auto add = [&text](const std::string& section) {
    if (!section.empty()) text += "\n" + section;
  };
  if (judgement.fit.usable) {
    add(ratios_drawn(judgement, look));
    add(curves_drawn(judgement, look));
    add(arms_table(judgement, look));
    add(across_media_section(judgement, look));
    add(factor_section(judgement, look));
    add(run_by_run_section(judgement, look));
    add(what_else_differed(judgement, look));
    add(curve_warnings(judgement, look));
  }
  add(runs_and_remarks(judgement, look));
  add(what_cannot_be_said(judgement, look));
  add(how_it_was_read(judgement, look));
  add(second_opinions(judgement, look) + fit_line(judgement, look));
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
    text += "\n" + wrapped(
                       "Different kinds of reading, and different threads, are judged apart: they "
                       "never share a scale or a fit.",
                       {},
                       look);
  }
  return text;
}

}  // namespace keenfall::cli
