#include "benchmarks/trial_file.h"

#include "benchmarks/measured_child.h"
#include "exchange/long_table_text.h"

#include <fstream>
#include <stdexcept>

namespace keenfall::benchmarks {

std::optional<base::Problem> write_trial(const std::filesystem::path& path,
                                         const std::function<trials::Trial()>& make) {
  const auto written = measured_work([&] {
    std::ofstream file(path, std::ios::binary);
    file << exchange::long_table_of(make());
    file.close();
    if (!file) throw std::runtime_error("cannot be written: " + path.string());
    return Findings{};
  });
  if (!written) return written.error();
  return std::nullopt;
}

}  // namespace keenfall::benchmarks
