// What a piece of work costs, measured on a process of its own: processor time and peak memory are
// then its own and nobody else's.
//
// In: a function of ours, or a program with its arguments. It reports what it found in lines "name
// number". Fails when the work cannot be started, fails itself or reports anything else.
#pragma once

#include "base/result.h"

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

using Findings = std::map<std::string, double>;

struct Measured {
  double cpu_s = 0;           // user and system, of all its threads
  double wall_s = 0;          // as a clock on the wall shows it
  double peak_memory_mb = 0;  // most memory resident at once; MB are millions of bytes
  Findings findings;
};

[[nodiscard]] base::Result<Measured> measured_work(const std::function<Findings()>& work);

// The program is looked for on the PATH; its standard output is the report.
[[nodiscard]] base::Result<Measured> measured_program(const std::vector<std::string>& words);

// The same, but its standard output goes into the file, and it reports nothing.
[[nodiscard]] base::Result<Measured> measured_program(const std::vector<std::string>& words,
                                                      const std::filesystem::path& output);

[[nodiscard]] bool is_on_path(const std::string& program);

}  // namespace keenfall::benchmarks
