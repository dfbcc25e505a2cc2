// With what a device begins at the bench: the notebook that is open, and the trials that can be
// cut. Shape: docs/wire/api.json (BenchToCut).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

struct TrialToCut {
  std::string uid;
  std::string name;
  std::size_t runs = 0;  // planned, and further ones
  std::size_t left = 0;  // not cut yet
};

struct BenchToCut {
  bool is_at_desk = false;  // the device may ask for the desk's pages too
  std::string notebook;     // what X-Keenfall-Notebook says of it; empty: none is open
  std::string notebook_name;
  std::vector<TrialToCut> trials;  // whose plan is sealed
};

[[nodiscard]] std::string bench_to_cut_to_json(const BenchToCut& start);

}  // namespace keenfall::wire
