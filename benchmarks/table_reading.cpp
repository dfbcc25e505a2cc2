#include "benchmarks/table_reading.h"

#include "exchange/long_table.h"

#include <array>
#include <stdexcept>
#include <string>

namespace keenfall::benchmarks {

namespace {

Findings counted(const trials::Trial& trial) {
  Findings found{{"runs", static_cast<double>(trial.runs.size())}};
  for (const trials::Run& run : trial.runs) {
    for (const trials::Reading& reading : run.readings) {
      found["readings"] += 1;
      found["struck"] += reading.struck_reason ? 1 : 0;
      found["doubtful"] += reading.doubtful_reason ? 1 : 0;
    }
  }
  return found;
}

}  // namespace

base::Result<Measured> measured_reading(const TableFile& table) {
  const Findings written{{"runs", table.runs},
                         {"readings", table.readings},
                         {"struck", table.struck},
                         {"doubtful", table.doubtful}};
  return measured_work([&] {
    const std::array paths{table.path.string()};
    const auto trial = exchange::take_tables(paths, {});
    if (!trial) throw std::runtime_error(base::in_words(trial.error().front()));
    Findings found = counted(*trial);
    if (found != written) throw std::runtime_error("not all that was written was taken in");
    return found;
  });
}

}  // namespace keenfall::benchmarks
