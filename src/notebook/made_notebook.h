// For tests: a folder of its own, and a small trial with some of everything.
#pragma once

#include "notebook/kit.h"
#include "notebook/notebook.h"
#include "notebook/plans.h"
#include "trials/trial.h"

#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

namespace keenfall::notebook::testing {

inline const Opener kOpener{.words = "R. on bench-2, process 4711",
                            .at_utc = "2026-11-26T12:00:00Z"};

// How often, by an environment variable.
inline int times_asked_for(const char* variable, int otherwise) {
  const char* asked = std::getenv(variable);
  return asked == nullptr ? otherwise : static_cast<int>(std::strtol(asked, nullptr, 10));
}

// Where files need not outlast the test: in memory, if the machine has such a place.
inline std::filesystem::path quick_place() {
  const std::filesystem::path in_memory = "/dev/shm";
  return std::filesystem::is_directory(in_memory) ? in_memory
                                                  : std::filesystem::temp_directory_path();
}

// Gone with everything in it when it goes out of scope.
class ScratchFolder {
 public:
  explicit ScratchFolder(const std::string& name,
                         const std::filesystem::path& in = std::filesystem::temp_directory_path())
      : path_(in / ("keenfall_notebook_" + std::to_string(getpid()) + "_" + name)) {
    std::filesystem::remove_all(path_);
    std::filesystem::create_directory(path_);
  }
  ~ScratchFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  ScratchFolder(ScratchFolder&&) = delete;
  ScratchFolder& operator=(ScratchFolder&&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  [[nodiscard]] std::string file(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

inline trials::Trial a_trial() {
  trials::Trial trial{
      .name = "matting",
      .blades = {{.name = "A", .steel = "C75S", .hardness = trials::Hardness{.reading = 58}},
                 {.name = "B", .specimens = {{.name = "1"}, {.name = "2"}}}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"},
                 {.kind = {.name = "flank_wear",  // a kind of one's own
                           .words = "flank wear",
                           .unit = "mm",
                           .keener_when = trials::KeenerWhen::lower,
                           .default_level = 3,
                           .resolution = 0.01},
                  .unit = "mm",
                  .thread = "tip"}},
      .remarks = {"Read as a long table."}};
  for (const char* blade : {"A", "B"}) {
    trials::Run run{.name = "1",
                    .arm = {.blade = blade,
                            .edge = {.bevel_angle = trials::PerSideAngle{17}, .finish = "9 um"},
                            .medium = {.name = "new matting", .condition = "dry"},
                            .method = {.motion = trials::Motion::draw, .cut_length_mm = 400.5}},
                    .block = "1",
                    .order = 2,
                    .edge_lives = {{.test = "slices newsprint", .lasted_cuts = 40}},
                    .events = {{.kind = trials::EventKind::wet, .cuts = 12, .as_written = "wet"}},
                    .deviations = {"gate failed"},
                    .notes = {"tired"}};
    for (int i = 0; i < 4; ++i) {
      run.readings.push_back({.cuts = 5.0 * i, .reading = 104 + 10.5 * i, .station = "mid"});
    }
    run.readings[1].struck_reason = "slipped";
    run.readings[2].doubtful_reason = "marked ?";
    trial.runs.push_back(run);
  }
  return trial;
}

// One of each kind of thing; the lot's medium is the third.
inline std::vector<KitThing> a_kit() {
  const trials::Medium matting{.name = "new matting", .condition = "dry"};
  return {
      trials::Blade{.name = "C",
                    .steel = "X153CrMoV12",
                    .hardness = trials::Hardness{.reading = 61, .error = 1},
                    .specimens = {{.name = "i"},
                                  {.name = "ii", .hardness = trials::Hardness{.reading = 60.5}}}},
      trials::NamedEdge{.name = "fine",
                        .edge = {.bevel_angle = trials::PerSideAngle{17}, .finish = "9 um"},
                        .note = "by hand"},
      matting,
      trials::MediumLot{.medium = matting, .name = "roll 7", .length_m = 30, .note = "spring"},
      trials::Thread{.kind = "thread_push", .name = "0.25 mm polyester", .lot = "3"},
      trials::ReadingKind{.name = "flank_wear",
                          .words = "flank wear",
                          .unit = "mm",
                          .default_level = 3,
                          .resolution = 0.01},
      trials::KitStone{.name = "the coarse plate", .abrasive = "diamond", .grit = "45 µm"}};
}

// What may be asked of the blades of a_trial(), with everything that a plan can say.
inline Asked what_is_asked() {
  trials::PlannedCutting matting{.medium = {.name = "new matting", .condition = "dry"},
                                 .lot = "roll 7",
                                 .method = {.motion = trials::Motion::draw, .cut_length_mm = 400.5},
                                 .checkpoint_cuts = {0, 5, 12.5, 30}};
  trials::PlannedCutting felt{.medium = {.name = "felt"}, .checkpoint_cuts = {0, 10}};
  return {
      .claims = {{.words = "A outlasts B in new matting; by half at least"},
                 {.words = "In felt too", .worth_it_margin = 1.25}},
      .plan = {.counted = {.one = "stroke", .many = "strokes"},
               .cuttings = {matting, felt},
               .arms = {{.blade = "A",
                         .edge = {.bevel_angle = trials::PerSideAngle{17},
                                  .apex_angle = trials::PerSideAngle{20},
                                  .finish = "9 um",
                                  .thickness_behind_edge_mm = 0.3}},
                        {.blade = "B", .cutting = 1}},
               .reading = {.thread = "0.25 mm polyester", .repeats = 3, .stations = {"heel", ""}},
               .start_gate = trials::StartGate{.target_reading = 104},
               .stop = {.level = 4, .force_cap_newton = 60},
               .runs_each = 2,
               .looks = {1, 2},
               .house_blade = "A",
               .order_seed = {18446744073709551615U},
               .runs = {{.arm = 1, .specimen = "2", .block = 1, .order = 1},
                        {.arm = 0, .block = 1, .order = 2},
                        {.arm = 0, .block = 2, .order = 3},
                        {.arm = 1, .specimen = "1", .block = 2, .order = 4}}}};
}

}  // namespace keenfall::notebook::testing
