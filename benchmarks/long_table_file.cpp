#include "benchmarks/long_table_file.h"

#include "base/seed.h"
#include "numerics/random.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

namespace keenfall::benchmarks {

namespace {

constexpr int kCheckpoints = 20;
constexpr int kRepeats = kReadingsOfRun / kCheckpoints;
constexpr int kBlades = 50;
constexpr std::array kSteels{"C75S", "X90CrMoV18", "X153CrMoV12", "90MnCrV8", "HS6-5-2C"};
constexpr std::array kMedia{"new sisal", "\"sisal, uplifted\"", "cardboard", "\"cord, 10 mm\""};
constexpr std::array kStations{"heel", "middle", "tip"};
// Shares of the readings, as a tidy bench might have them.
constexpr double kStruckShare = 0.01;
constexpr double kDoubtfulShare = 0.02;
constexpr double kNotedShare = 0.02;

struct RunWritten {
  int run = 0;
  double start = 0;
  double half_keenness = 0;
};

// What stands behind a reading, and whether it is struck or doubtful.
struct Beside {
  const char* mark = "";
  const char* struck = "";
  const char* doubtful = "";
  const char* note = "";
};

Beside drawn_beside(numerics::RandomStream& random) {
  Beside beside;
  const double u = random.uniform();
  if (u < kStruckShare) {
    beside.struck = "\"thread slipped, read again\"";
  } else if (u < kStruckShare + kDoubtfulShare / 2) {
    beside.mark = "?";
  } else if (u < kStruckShare + kDoubtfulShare) {
    beside.doubtful = "slack thread";
  }
  if (random.uniform() < kNotedShare) beside.note = R"("said ""hard"", by hand")";
  return beside;
}

void append_run(std::string& text,
                TableFile& table,
                const RunWritten& of,
                numerics::RandomStream& random) {
  const int blade = of.run % kBlades;
  const int medium = of.run / kBlades % static_cast<int>(kMedia.size());
  const int number = of.run / (kBlades * static_cast<int>(kMedia.size())) + 1;
  const std::string start_of_row = fmt::format("\"Blade {}, long\",{},{},{},{},17,",
                                               blade + 1,
                                               kSteels.at(static_cast<std::size_t>(blade) % 5),
                                               kMedia.at(static_cast<std::size_t>(medium)),
                                               number,
                                               (number - 1) / 5 + 1);
  for (int checkpoint = 0; checkpoint < kCheckpoints; ++checkpoint) {
    const int cuts = checkpoint * checkpoint;
    const double level = of.start * (1 + std::pow(cuts / of.half_keenness, 0.7));
    for (int repeat = 1; repeat <= kRepeats; ++repeat) {
      const Beside beside = drawn_beside(random);
      table.struck += *beside.struck == '\0' ? 0 : 1;
      table.doubtful += *beside.mark == '\0' && *beside.doubtful == '\0' ? 0 : 1;
      fmt::format_to(std::back_inserter(text),
                     "{}{},{:.1f}{},gf,{},{},{},{},{}\n",
                     start_of_row,
                     cuts,
                     level * std::exp(0.09 * random.normal()),
                     beside.mark,
                     kStations.at(static_cast<std::size_t>(repeat) % kStations.size()),
                     repeat,
                     beside.struck,
                     beside.doubtful,
                     beside.note);
      ++table.readings;
    }
  }
}

}  // namespace

base::Result<TableFile> write_long_table(const std::filesystem::path& path, int runs) {
  numerics::RandomStream random(base::Seed{1}, 0);
  TableFile table{.path = path, .runs = runs};
  std::ofstream file(path, std::ios::binary);
  std::string text =
      "blade,steel,medium,run,block,bevel_angle_per_side_deg,cuts,reading,unit,station,repeat,"
      "struck,doubtful,note\n";
  for (int run = 0; run < runs; ++run) {
    append_run(text,
               table,
               {.run = run,
                .start = 104 * std::exp(0.06 * random.normal()),
                .half_keenness = 40 * std::exp(0.3 * random.normal())},
               random);
    file << text;
    table.bytes += static_cast<double>(text.size());
    text.clear();
  }
  file.close();
  if (!file) {
    return base::failed({.kind = base::ProblemKind::unreadable,
                         .sentence = "The table to be read cannot be written.",
                         .place = {.file = path.string()}});
  }
  return table;
}

}  // namespace keenfall::benchmarks
