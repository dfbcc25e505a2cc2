#include "page/planned_words.h"

#include "telling/listed.h"

#include <algorithm>

namespace keenfall::page {

namespace {

// The same for all comparisons of a report; empty where one look was all that was planned.
std::vector<int> looks_planned(const telling::Report& report) {
  for (const telling::ReportedJudgement& reported : report.judgements) {
    for (const verdicts::Comparison& pair : reported.judgement.comparisons) {
      if (pair.look) return pair.look->planned;
    }
  }
  return {};
}

std::string looks_sentence(const std::vector<int>& looks) {
  std::vector<std::string> runs;
  for (const int count : looks) runs.push_back(std::to_string(count));
  return "Planned were looks at " + telling::listed(runs) +
         " runs of every edge, as whoever judged it said; when that was planned is not recorded.";
}

}  // namespace

std::vector<std::string> planned_words(const telling::Report& report) {
  if (!report.planned.empty()) return report.planned;
  const std::vector<int> looks = looks_planned(report);
  const bool departed = std::ranges::any_of(
      report.trial.runs, [](const trials::Run& run) { return !run.deviations.empty(); });
  std::vector<std::string> sentences;
  if (!looks.empty()) sentences.push_back(looks_sentence(looks));
  if (departed) {
    sentences.emplace_back(
        "Departures from a plan were written down and stand above; the plan itself is not recorded "
        "with this trial.");
  }
  sentences.emplace_back(
      looks.empty() && !departed
          ? "No plan and no claim that was written down before the first cut is recorded with this "
            "trial."
          : "No claim that was written down before the first cut is recorded with this trial.");
  return sentences;
}

}  // namespace keenfall::page
