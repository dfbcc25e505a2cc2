// Other programs that do part of the same work on the same data, run beside ours.
#pragma once

#include "base/result.h"
#include "benchmarks/measured_child.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

// A script of benchmarks/peers/ by its interpreter: "python3" or "Rscript"; Debian's own Python is
// "/usr/bin/python3", for scripts that need a library of it.
struct PeerScript {
  std::string interpreter;
  std::string file;                // "read_csv.py"
  std::vector<std::string> words;  // its arguments
  std::string library;             // "numpy", "nlme", "rstan"; empty: needs none
};

// Absent, and said so on standard output, where the interpreter or what it needs is not installed.
[[nodiscard]] std::optional<base::Result<Measured>> measured_peer(const PeerScript& script);

}  // namespace keenfall::benchmarks
