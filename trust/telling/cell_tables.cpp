#include "trust/telling/cell_tables.h"

#include "base/plain_number.h"
#include "trust/measuring/cell_sums.h"
#include "trust/measuring/rivals.h"
#include "trust/telling/markdown.h"

#include <cmath>

namespace keenfall::trust {

namespace {

double trials_in(const CellResult& result) { return sum_of(result.sums, counted::kTrials); }

Estimate share_in(const CellResult& result, std::string_view what) {
  return share(sum_of(result.sums, what), trials_in(result));
}

std::string ratio_words(TrueRatio ratio) { return ratio == TrueRatio::one ? "1" : "margin"; }

// What begins every row.
std::vector<std::string> row_of(const CellResult& result) {
  return {std::string(result.cell->name) + (result.cell->misspecified ? " (misspecified)" : ""),
          ratio_words(result.ratio),
          base::plain_number(trials_in(result))};
}

Estimate rival_coverage(const CellResult& result, std::string_view rival) {
  return share_in(result, std::string(rival) + std::string(counted::kRivalCovers));
}

Estimate wider_than(const CellResult& result, std::string_view rival) {
  const std::string name(rival);
  return mean_ratio(sum_of(result.sums, name + std::string(counted::kWider)),
                    sum_of(result.sums, name + std::string(counted::kWiderSquared)),
                    sum_of(result.sums, name + std::string(counted::kBothAnswered)));
}

bool has_widths(const CellResult& result, std::string_view rival) {
  return sum_of(result.sums, std::string(rival) + std::string(counted::kBothAnswered)) >= 2;
}

}  // namespace

Bar coverage_bar(const Cell& cell) {
  return {.side = Side::at_least, .limit = cell.misspecified ? 0.91 : 0.93};
}

NarrowestRival narrowest_of(const CellResult& result) {
  NarrowestRival narrowest;
  for (const Rival& rival : kRivals) {
    if (is_missed(rival_coverage(result, rival.name), coverage_bar(*result.cell))) continue;
    if (!has_widths(result, rival.name)) continue;
    const Estimate wider = wider_than(result, rival.name);
    if (narrowest.name.empty() || wider.value > narrowest.wider.value) {
      narrowest = {.name = std::string(rival.name), .wider = wider};
    }
  }
  return narrowest;
}

std::string coverage_table(std::span<const CellResult> results) {
  MarkdownTable table{.heads = {"cell",
                                "true ratio",
                                "trials",
                                "ratio of half keenness",
                                "ratio of cuts to 4 times the start",
                                "cuts of one blade to there",
                                "bar",
                                "unusable fits (bar: 1 %)"}};
  for (const CellResult& result : results) {
    const Bar bar = coverage_bar(*result.cell);
    std::vector<std::string> row = row_of(result);
    for (const auto what :
         {counted::kCoversHalf, counted::kCoversLevel, counted::kCoversLevelOfA}) {
      row.push_back(percent_against(share_in(result, what), bar));
    }
    row.push_back(base::with_decimals(100 * bar.limit, 0) + " %");
    row.push_back(percent_against(share_in(result, counted::kUnusable), kUnusableFits));
    table.rows.push_back(std::move(row));
  }
  return in_markdown(table);
}

std::string verdicts_table(std::span<const CellResult> results) {
  MarkdownTable table{.heads = {"cell",
                                "true ratio",
                                "trials",
                                "longer or shorter",
                                "practically the same",
                                "false (bar: 5 %)",
                                "interval that decides holds the truth"}};
  for (const CellResult& result : results) {
    const Estimate different = share_in(result, counted::kLongerOrShorter);
    const Estimate same = share_in(result, counted::kTheSame);
    const Estimate& wrong = result.ratio == TrueRatio::one ? different : same;
    std::vector<std::string> row = row_of(result);
    row.push_back(percent(different));
    row.push_back(percent(same));
    row.push_back(percent_against(wrong, kFalseAnswers));
    row.push_back(
        percent_against(share_in(result, counted::kCoversDeciding), coverage_bar(*result.cell)));
    table.rows.push_back(std::move(row));
  }
  return in_markdown(table);
}

std::string widths_table(std::span<const CellResult> results) {
  MarkdownTable table{.heads = {"cell", "true ratio", "typical 95 % interval"}};
  for (const Rival& rival : kRivals) {
    table.heads.push_back("times as wide as " + std::string(rival.name) + " (which covers)");
  }
  table.heads.push_back("the narrowest that covers (bar: 1.15)");
  for (const CellResult& result : results) {
    const double answered = trials_in(result) - sum_of(result.sums, counted::kUnusable);
    const double half_width = 0.5 * sum_of(result.sums, counted::kLogWidth) / answered;
    std::vector<std::string> row{row_of(result)[0],
                                 ratio_words(result.ratio),
                                 "×÷ " + base::with_decimals(std::exp(half_width), 2)};
    for (const Rival& rival : kRivals) {
      const Estimate covers = rival_coverage(result, rival.name);
      row.push_back((has_widths(result, rival.name) ? ratio(wider_than(result, rival.name)) : "–") +
                    " (" + percent(covers) +
                    (is_missed(covers, coverage_bar(*result.cell)) ? ", does not cover" : "") +
                    ")");
    }
    const NarrowestRival narrowest = narrowest_of(result);
    row.push_back(narrowest.name.empty()
                      ? "none covers"
                      : narrowest.name + ": " + ratio(narrowest.wider) +
                            (is_missed(narrowest.wider, kWidth) ? " **missed**" : ""));
    table.rows.push_back(std::move(row));
  }
  return in_markdown(table);
}

std::string engines_table(std::span<const CellResult> results) {
  MarkdownTable table{.heads = {"cell",
                                "true ratio",
                                "trials",
                                "full engine covers",
                                "quick covers more often by",
                                "full ÷ quick width",
                                "same verdict (bar: 97 %)",
                                "false answers of the full engine (bar: 5 %)",
                                "unusable fits (bar: 1 %)"}};
  for (const CellResult& result : results) {
    const double both =
        sum_of(result.sums, std::string(kQuickEngine) + std::string(counted::kBothAnswered));
    if (both < 2) continue;
    const double quick = sum_of(result.sums, counted::kQuickAlone);
    const double full = sum_of(result.sums, counted::kFullAlone);
    const double more = (quick - full) / both;
    const double error = std::sqrt(((quick + full) / both - more * more) / both);
    const auto wrong =
        result.ratio == TrueRatio::one ? counted::kLongerOrShorter : counted::kTheSame;
    std::vector<std::string> row = row_of(result);
    row.push_back(
        percent_against(share_in(result, counted::kCoversHalf), coverage_bar(*result.cell)));
    row.push_back(percent({.value = more, .error = error}));
    row.push_back(ratio(wider_than(result, kQuickEngine)));
    row.push_back(percent_against(share(sum_of(result.sums, counted::kAgree), both), kAgreement));
    row.push_back(percent_against(share_in(result, wrong), kFalseAnswers));
    row.push_back(percent_against(share_in(result, counted::kUnusable), kUnusableFits));
    table.rows.push_back(std::move(row));
  }
  return in_markdown(table);
}

}  // namespace keenfall::trust
