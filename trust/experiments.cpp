#include "trust/experiment.h"

#include "trust/measuring/calibration.h"
#include "trust/measuring/cell_sums.h"
#include "trust/measuring/looks.h"

#include <algorithm>
#include <array>
#include <utility>

namespace keenfall::trust {

namespace {

struct Size {
  int trials = 0;
  int batch = 0;
};

constexpr Size kQuickCell{.trials = 4000, .batch = 50};
constexpr Size kFullCell{.trials = 400, .batch = 5};
constexpr Size kLooks{.trials = 10000, .batch = 50};
constexpr Size kQuickRanks{.trials = 4000, .batch = 50};
constexpr Size kFullRanks{.trials = 1000, .batch = 5};

constexpr std::array kRatios{std::pair{TrueRatio::one, ".one"},
                             std::pair{TrueRatio::margin, ".margin"}};

int batches_of(const Size& size, int most_trials) {
  return (std::min(size.trials, most_trials) + size.batch - 1) / size.batch;
}

Batch batch_of(const Size& size, int number) {
  return {.first = static_cast<std::uint64_t>(number) * static_cast<std::uint64_t>(size.batch),
          .trials = size.batch};
}

std::string sized(const std::string& definition, const Size& size) {
  return definition + "; batches of " + std::to_string(size.batch);
}

void add_cells(std::vector<Experiment>& all, int most_trials) {
  for (const Cell& cell : cells()) {
    for (const auto& [ratio, ending] : kRatios) {
      const TrueRatio at = ratio;
      all.push_back({.name = std::string(cell.name) + ending,
                     .kind = "cells",
                     .cell = std::string(cell.name),
                     .about = std::string(cell.about),
                     .definition = sized(definition_of(cell) + ending, kQuickCell),
                     .batches = batches_of(kQuickCell, most_trials),
                     .measured = [&cell, at](int batch) {
                       return quick_sums(cell, at, batch_of(kQuickCell, batch));
                     }});
    }
  }
}

void add_full_cells(std::vector<Experiment>& all, int most_trials) {
  for (const Cell& cell : cells()) {
    if (!cell.main) continue;
    for (const auto& [ratio, ending] : kRatios) {
      const TrueRatio at = ratio;
      all.push_back({.name = "full-" + std::string(cell.name) + ending,
                     .kind = "full",
                     .cell = "full-" + std::string(cell.name),
                     .about = std::string(cell.about) + ", by the full engine beside the quick one",
                     .definition = sized("full " + definition_of(cell) + ending, kFullCell),
                     .batches = batches_of(kFullCell, most_trials),
                     .measured = [&cell, at](int batch) {
                       return full_sums(cell, at, batch_of(kFullCell, batch));
                     }});
    }
  }
}

void add_looks(std::vector<Experiment>& all, int most_trials) {
  for (const LooksCell& cell : looks_cells()) {
    for (const auto& [ratio, ending] : kRatios) {
      const TrueRatio at = ratio;
      all.push_back({.name = std::string(cell.name) + ending,
                     .kind = "looks",
                     .cell = std::string(cell.name),
                     .about = std::string(cell.about),
                     .definition = sized(definition_of(cell) + ending, kLooks),
                     .batches = batches_of(kLooks, most_trials),
                     .measured = [&cell, at](int batch) {
                       return looks_sums(cell, at, batch_of(kLooks, batch));
                     }});
    }
  }
}

void add_calibration(std::vector<Experiment>& all, int most_trials) {
  for (const CalibrationDesign& design : calibration_designs()) {
    const std::string cell = "calibration-" + std::string(design.name);
    all.push_back({.name = cell + ".quick",
                   .kind = "calibration",
                   .cell = cell,
                   .about = std::string(design.about),
                   .definition = sized(definition_of(design) + " quick", kQuickRanks),
                   .batches = batches_of(kQuickRanks, most_trials),
                   .measured = [&design](int batch) {
                     return quick_ranks(design, batch_of(kQuickRanks, batch));
                   }});
    all.push_back({.name = cell + ".full",
                   .kind = "calibration",
                   .cell = cell,
                   .about = std::string(design.about),
                   .definition = sized(definition_of(design) + " full", kFullRanks),
                   .batches = batches_of(kFullRanks, most_trials),
                   .measured = [&design](int batch) {
                     return full_ranks(design, batch_of(kFullRanks, batch));
                   }});
  }
}

}  // namespace

std::vector<Experiment> all_experiments(int most_trials) {
  std::vector<Experiment> all;
  add_cells(all, most_trials);
  add_looks(all, most_trials);
  add_calibration(all, most_trials);
  add_full_cells(all, most_trials);
  return all;
}

}  // namespace keenfall::trust
