#include "tables_on_disk.h"

#include <fstream>
#include <sstream>

#include <unistd.h>

namespace keenfall::journeys {

std::string readings_of(int blades) {
  std::string table = "blade,medium,run,cuts,reading\n";
  for (int blade = 1; blade <= blades; ++blade) {
    const std::string name =
        blade == 1 ? "A" : (blade == blades ? "C" : "blade " + std::to_string(blade));
    for (int run = 1; run <= 3; ++run) {
      for (const int cuts : {0, 2, 5, 10, 20, 40}) {
        const double half_keenness_cuts = 10.0 * blade * (1 + 0.1 * (run - 2));
        const double reading = 100 * (1 + cuts / half_keenness_cuts) + cuts % 3;
        table += name + ",rope," + std::to_string(run) + "," + std::to_string(cuts) + "," +
                 std::to_string(reading) + "\n";
      }
    }
  }
  return table;
}

std::filesystem::path scratch(const std::string& name) {
  const auto folder =
      std::filesystem::temp_directory_path() / ("keenfall_journeys_" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  return folder / name;
}

std::string a_table(const std::string& name, const std::string& content) {
  const auto path = scratch(name);
  std::ofstream(path) << content;
  return path.string();
}

std::string content_of(const std::string& path) {
  std::ostringstream content;
  content << std::ifstream(path).rdbuf();
  return content.str();
}

Said keenfall(const std::vector<std::string>& words) {
  return run({.program = KEENFALL_PROGRAM, .words = words, .environment = {{"LC_ALL", "C.UTF-8"}}});
}

}  // namespace keenfall::journeys
