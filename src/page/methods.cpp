#include "page/methods.h"

#include "base/require.h"
#include "page/embedded.h"
#include "verdicts/judge_lives.h"

#include <algorithm>

namespace keenfall::page {

std::string methods_of(const telling::Report& report) {
  std::vector<std::string> of;
  for (const telling::ReportedJudgement& reported : report.judgements) {
    const verdicts::Judgement& judgement = reported.judgement;
    const bool is_of_tests = judgement.kind.name == verdicts::kEdgeLives ||
                             judgement.kind.use == trials::ReadingUse::evidence;
    of.emplace_back(is_of_tests ? "tested" : "read");
    if (!judgement.comparisons.empty()) of.emplace_back("pairs");
  }
  return kept_of(report_methods(), of);
}

std::string kept_of(std::string_view text, const std::vector<std::string>& of) {
  constexpr std::string_view kBegin = "<!--of ";
  constexpr std::string_view kClose = "-->";
  constexpr std::string_view kEnd = "<!--end-->";
  std::string kept;
  while (true) {
    const std::size_t begin = text.find(kBegin);
    kept += text.substr(0, begin);
    if (begin == std::string_view::npos) return kept;
    text.remove_prefix(begin + kBegin.size());
    const std::size_t close = text.find(kClose);
    const std::size_t end = text.find(kEnd);
    base::require(close < end && end != std::string_view::npos, "every mark of the methods ends");
    if (std::ranges::count(of, text.substr(0, close)) > 0) {
      kept += text.substr(close + kClose.size(), end - close - kClose.size());
    }
    text.remove_prefix(end + kEnd.size());
  }
}

}  // namespace keenfall::page
