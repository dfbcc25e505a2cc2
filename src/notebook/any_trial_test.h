// For tests: trials of every shape a table or a bench can make, at random.
#pragma once

#include "trials/trial.h"

#include <rapidcheck.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook::testing {

// Names a person may type; also those that other formats stumble over.
inline rc::Gen<std::string> any_words() {
  return rc::gen::element<std::string>("",
                                       "1",
                                       "tired",
                                       "slipped, twice",
                                       "\"so called\"",
                                       "line one\nline two",
                                       " with blanks ",
                                       "#7",
                                       "NULL",
                                       "Größe µm ≥ 9",
                                       "a\r\nb");
}

template <class T>
rc::Gen<std::optional<T>> maybe(rc::Gen<T> value) {
  return rc::gen::oneOf(
      rc::gen::just(std::optional<T>()),
      rc::gen::map(std::move(value), [](T some) { return std::optional<T>(some); }));
}

// Finite, of any size, sometimes none that decimals write exactly.
inline rc::Gen<double> any_number() {
  return rc::gen::map(rc::gen::inRange(0, 1 << 30),
                      [](int number) { return static_cast<double>(number) / 1024.0 + 0.1; });
}

inline trials::Run any_run(const std::string& blade, std::size_t series_count) {
  trials::Run run;
  run.arm.blade = blade;
  run.name = *rc::gen::element<std::string>("1", "2", "3", "x, y");
  if (*rc::gen::arbitrary<bool>()) run.arm.edge.bevel_angle = trials::PerSideAngle{17.25};
  run.arm.edge.finish = *any_words();
  run.arm.medium.name = *rc::gen::element<std::string>("new matting", "felt", "rope \"hard\"");
  run.arm.medium.condition = *rc::gen::element<std::string>("", "wet");
  run.arm.method.cut_length_mm = *maybe(any_number());
  run.block = *any_words();
  run.order = *maybe(rc::gen::inRange(1, 99));
  run.operator_name = *any_words();
  run.voided_reason = *maybe(any_words());
  double cuts = 0;
  for (int i = *rc::gen::inRange(0, 5); i > 0; --i) {
    cuts += *rc::gen::inRange(0, 20);
    run.readings.push_back({.series = *rc::gen::inRange<std::size_t>(0, series_count),
                            .cuts = cuts,
                            .reading = *any_number(),
                            .station = *any_words(),
                            .repeat = *maybe(rc::gen::inRange(1, 7)),
                            .struck_reason = *maybe(any_words()),
                            .doubtful_reason = *maybe(any_words()),
                            .line = *rc::gen::inRange<std::size_t>(0, 99)});
  }
  for (int i = *rc::gen::inRange(0, 2); i > 0; --i) {
    run.edge_lives.push_back(
        {.test = *any_words(), .lasted_cuts = *any_number(), .struck_reason = *maybe(any_words())});
    trials::EdgeLife& life = run.edge_lives.back();
    life.failed_by_cuts = *maybe(
        rc::gen::map(any_number(), [&](double more) { return life.lasted_cuts + 1 + more; }));
    run.events.push_back(
        {.kind = trials::EventKind::wet, .cuts = *any_number(), .as_written = *any_words()});
    run.deviations.push_back(*any_words());
    run.notes.push_back(*any_words());
  }
  return run;
}

// Runs of one blade have names of their own: one that states less of its edge or its cuts than
// another of the same name would be taken for the same run.
inline trials::Trial any_trial(const std::string& name) {
  trials::Trial trial{.name = name};
  trial.series.push_back({.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"});
  trial.series.push_back(
      {.kind = *trials::find_reading_kind("paper_reach"), .unit = "mm", .thread = *any_words()});
  const std::vector<std::string> names = {"A", "B \"long\"", "C, old"};
  const std::size_t count = *rc::gen::inRange<std::size_t>(1, 4);
  for (std::size_t b = 0; b < count; ++b) {
    // The same of a blade in every trial, as it is one blade.
    trials::Blade blade{.name = names[b], .steel = b == 0 ? "C75S" : ""};
    if (b == 2) {
      blade.hardness = trials::Hardness{.reading = 61.5, .error = 0.5};
      blade.specimens = {{.name = "i"},
                         {.name = "ii", .hardness = trials::Hardness{.reading = 60}}};
    }
    trial.blades.push_back(blade);
    for (int r = *rc::gen::inRange(0, 3); r > 0; --r) {
      const trials::Run run = any_run(blade.name, trial.series.size());
      const bool is_known = std::ranges::any_of(trial.runs, [&](const trials::Run& other) {
        return other.arm.blade == run.arm.blade && other.name == run.name;
      });
      if (!is_known) trial.runs.push_back(run);
    }
  }
  for (int i = *rc::gen::inRange(0, 2); i > 0; --i) trial.remarks.push_back(*any_words());
  return trial;
}

}  // namespace keenfall::notebook::testing
