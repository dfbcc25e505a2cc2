#include "trust/results.h"

#include "trust/measuring/calibration.h"
#include "trust/telling/cell_tables.h"
#include "trust/telling/looks_table.h"
#include "trust/telling/ranks_table.h"

#include <algorithm>
#include <map>

namespace keenfall::trust {

namespace {

using KeptSums = std::map<std::string, Sums>;  // by the experiment's name; none empty

const Sums* find(const KeptSums& kept, const std::string& name) {
  const auto found = kept.find(name);
  return found == kept.end() ? nullptr : &found->second;
}

std::vector<CellResult> cell_results(const KeptSums& kept, const std::string& before) {
  std::vector<CellResult> results;
  for (const Cell& cell : cells()) {
    const std::string name = before + std::string(cell.name);
    for (const TrueRatio ratio : {TrueRatio::one, TrueRatio::margin}) {
      const Sums* sums = find(kept, name + (ratio == TrueRatio::one ? ".one" : ".margin"));
      if (sums != nullptr) results.push_back({.cell = &cell, .ratio = ratio, .sums = *sums});
    }
  }
  return results;
}

std::vector<LooksResult> looks_results(const KeptSums& kept) {
  std::vector<LooksResult> results;
  for (const LooksCell& cell : looks_cells()) {
    for (const TrueRatio ratio : {TrueRatio::one, TrueRatio::margin}) {
      const Sums* sums =
          find(kept, std::string(cell.name) + (ratio == TrueRatio::one ? ".one" : ".margin"));
      if (sums != nullptr) results.push_back({.cell = &cell, .ratio = ratio, .sums = *sums});
    }
  }
  return results;
}

std::vector<RanksResult> ranks_results(const KeptSums& kept) {
  std::vector<RanksResult> results;
  for (const CalibrationDesign& design : calibration_designs()) {
    for (const std::string_view engine : {"full", "quick"}) {
      const Sums* sums =
          find(kept, "calibration-" + std::string(design.name) + "." + std::string(engine));
      if (sums != nullptr) {
        results.push_back({.design = design.name, .engine = engine, .sums = *sums});
      }
    }
  }
  return results;
}

}  // namespace

std::vector<ResultText> result_texts(std::span<const Running> runs) {
  KeptSums kept;
  for (const Running& run : runs) {
    if (run.kept.count() > 0) kept[run.experiment.name] = run.kept.total();
  }
  std::vector<ResultText> texts;
  if (const auto quick = cell_results(kept, ""); !quick.empty()) {
    texts.push_back({.file = "coverage.md", .text = coverage_table(quick)});
    texts.push_back({.file = "verdicts.md", .text = verdicts_table(quick)});
    texts.push_back({.file = "widths.md", .text = widths_table(quick)});
  }
  if (const auto full = cell_results(kept, "full-"); !full.empty()) {
    texts.push_back({.file = "engines.md", .text = engines_table(full)});
  }
  if (const auto looks = looks_results(kept); !looks.empty()) {
    texts.push_back({.file = "looks.md", .text = looks_table(looks)});
  }
  if (const auto ranks = ranks_results(kept); !ranks.empty()) {
    texts.push_back(
        {.file = "calibration.md", .text = ranks_summary(ranks) + "\n" + ranks_table(ranks)});
  }
  return texts;
}

}  // namespace keenfall::trust
