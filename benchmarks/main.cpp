// keenfall_benchmarks: runs the benchmarks that are named, or all; `list` names them.
#include "base/result.h"
#include "benchmarks/benchmark.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <span>
#include <string_view>
#include <vector>

namespace {

using namespace keenfall;

struct Benchmark {
  std::string_view name;
  std::string_view about;
  benchmarks::Outcome (*run)();
};

constexpr std::array kBenchmarks{
    Benchmark{"reading", "a table of a million readings is taken in", benchmarks::reading_a_table},
    Benchmark{"reading-growth",
              "the same with 250,000, 500,000 and 1,000,000 readings",
              benchmarks::growth_of_reading},
    Benchmark{
        "typical", "the demo's trial is judged, fully and quickly", benchmarks::typical_trial},
    Benchmark{"plain-ess",
              "the plain model is sampled, beside rstan (some ten minutes)",
              benchmarks::plain_model},
    Benchmark{"judge-process",
              "the program judges a small trial's table, start to end",
              benchmarks::judging_process},
    Benchmark{"judging-120", "120 runs in 12 arms are judged", benchmarks::hundred_runs},
    Benchmark{"judging-growth",
              "trials of more and more readings, runs and arms are judged",
              benchmarks::growth_of_judging},
    Benchmark{"large", "2,000 runs in 200 arms are judged (minutes)", benchmarks::large_trial},
    Benchmark{"notebook",
              "a million readings are taken into a notebook; a trial of 1,000 runs is shown and "
              "changed",
              benchmarks::keeping_a_notebook},
    Benchmark{"app",
              "the app is asked: a first look, another margin or level, the first page",
              benchmarks::asking_the_app},
    Benchmark{"apex",
              "100 edges are cut 1,000 times in gritty stock by the apex simulator",
              benchmarks::blunting_edges},
    Benchmark{"apex-growth",
              "the same with more runs, with sections kept, and on two threads",
              benchmarks::growth_of_blunting}};

void print_list() {
  for (const Benchmark& benchmark : kBenchmarks) {
    fmt::print("  {:<16}{}\n", benchmark.name, benchmark.about);
  }
}

}  // namespace

int main(int argument_count, char** arguments) {
  const std::span words(arguments, static_cast<std::size_t>(argument_count));
  std::vector<Benchmark> chosen;
  for (const std::string_view word : words.subspan(1)) {
    const auto found = std::ranges::find(kBenchmarks, word, &Benchmark::name);
    if (found == kBenchmarks.end()) {
      if (word != "list") fmt::print(stderr, "There is no benchmark \"{}\". There are:\n", word);
      print_list();
      return word == "list" ? 0 : 2;
    }
    chosen.push_back(*found);
  }
  if (chosen.empty()) chosen.assign(kBenchmarks.begin(), kBenchmarks.end());
  bool all_measured = true;
  for (const Benchmark& benchmark : chosen) {
    fmt::print("\n{}: {}\n", benchmark.name, benchmark.about);
    (void)std::fflush(stdout);
    if (const auto problem = benchmark.run()) {
      fmt::print("  {}\n", base::in_words(*problem));
      all_measured = false;
    }
  }
  return all_measured ? 0 : 1;
}
