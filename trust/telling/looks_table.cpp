#include "trust/telling/looks_table.h"

#include "base/plain_number.h"
#include "trust/telling/cell_tables.h"
#include "trust/telling/markdown.h"

namespace keenfall::trust {

std::string looks_table(std::span<const LooksResult> results) {
  MarkdownTable table{.heads = {"plan",
                                "true ratio",
                                "trials",
                                "false answer at any look (bar: 5 %)",
                                "the same without the plan's factor",
                                "intervals of all looks hold the truth (bar: 94 %)",
                                "the same without the factor"}};
  for (const LooksResult& result : results) {
    const double trials = sum_of(result.sums, "trials");
    const bool alike = result.ratio == TrueRatio::one;
    const auto of = [&](const std::string& what) {
      return share(sum_of(result.sums, what), trials);
    };
    const std::string wrong(alike ? counted::kLongerOrShorter : counted::kTheSame);
    const std::string covers(counted::kCoversHalf);
    table.rows.push_back({std::string(result.cell->name),
                          alike ? "1" : "margin",
                          base::plain_number(trials),
                          percent_against(of(wrong), kFalseAnswers),
                          percent(of("unstretched " + wrong)),
                          percent_against(of(covers), kRepeatedIntervals),
                          percent(of("unstretched " + covers))});
  }
  return in_markdown(table);
}

}  // namespace keenfall::trust
