#include "benchmarks/trial_file.h"

#include "benchmarks/measured_child.h"
#include "exchange/long_table.h"

#include <array>
#include <fstream>
#include <stdexcept>
#include <utility>

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

std::filesystem::path small_trial_table() {
  return std::filesystem::path(KEENFALL_SOURCE_DIR) / "tests" / "reference" /
         "two_blades_two_media.csv";
}

trials::Trial trial_in(const std::filesystem::path& table) {
  const std::array paths{table.string()};
  auto trial = exchange::take_tables(paths, {});
  if (!trial) throw std::runtime_error(base::in_words(trial.error().front()));
  return std::move(*trial);
}

}  // namespace keenfall::benchmarks
