#include "base/execution.h"
#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/made_trial.h"
#include "benchmarks/measured_child.h"
#include "benchmarks/peers.h"
#include "benchmarks/results_table.h"
#include "benchmarks/trial_file.h"
#include "benchmarks/working_folder.h"
#include "wire/home.h"
#include "wire/judged.h"
#include "workbench/app_home.h"
#include "workbench/judged_now.h"
#include "workbench/matting_bench.h"
#include "workbench/notebook_changes.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <functional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr double kAnsweredMs = 100;  // a person feels that it answers at once
constexpr double kFirstScreenMs = 1000;
constexpr TrialSize kManyRuns{.blades = 5, .media = 2, .runs = 10};  // 100 runs; ten such trials

const workbench::JudgedBy kBy{
    .hand = {.who = "R.", .machine_words = "bench-2", .at_utc = "2026-11-26T12:00:00Z"},
    .program_version = "0.1.0"};

void need(bool is_so, const std::string& otherwise) {
  if (!is_so) throw std::runtime_error(otherwise);
}

double median_ms(int times, const std::function<void(int)>& work) {
  std::vector<double> spent;
  for (int i = 0; i < times; ++i) {
    const auto began = std::chrono::steady_clock::now();
    work(i);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - began;
    spent.push_back(took.count());
  }
  std::ranges::sort(spent);
  return spent[spent.size() / 2];
}

std::string notebook_with(const std::string& path, const std::vector<trials::Trial>& trials) {
  need(workbench::new_notebook(path, "keenfall", kBy.hand).has_value(), "no notebook was made");
  for (const trials::Trial& trial : trials) {
    const workbench::MadeTrial made{.notebook = path, .trial = trial, .made_from = "made"};
    need(workbench::take_made(made, kBy.hand).has_value(), "a trial was not taken");
  }
  return path;
}

// As bytes that are sent.
std::string answer_to(workbench::AtHand& at_hand, const workbench::TrialToJudge& asked) {
  const auto judged = workbench::judge_quickly(at_hand, asked, base::unwatched());
  need(judged.has_value(), "the trial was not judged");
  return wire::judged_to_json(*judged);
}

Findings asked_of_the_demo(const std::string& path) {
  notebook_with(path, {workbench::matting_bench(workbench::kMattingBenchSeed)});
  workbench::AtHand at_hand;
  const auto home = workbench::home_of(at_hand, path);
  need(home.has_value(), "the first page failed");
  const workbench::TrialToJudge asked{.notebook = path, .uid = home->trials.front().uid, .by = kBy};
  constexpr int kTimes = 25;
  const double first = median_ms(kTimes, [&](int) {
    workbench::AtHand nothing_at_hand;
    answer_to(nothing_at_hand, asked);
  });
  const double margin = median_ms(kTimes, [&](int i) {
    workbench::TrialToJudge again = asked;
    again.question.worth_it_margin = 1.2 + 0.01 * i;
    answer_to(at_hand, again);
  });
  const double level = median_ms(kTimes, [&](int i) {
    workbench::TrialToJudge again = asked;
    again.question.stop_level = 1.5 + 0.05 * i;
    answer_to(at_hand, again);
  });
  return {{"first_ms", first}, {"margin_ms", margin}, {"level_ms", level}};
}

Findings first_screen(const std::string& path) {
  std::vector<trials::Trial> ten(10, made_trial(kManyRuns));
  for (std::size_t i = 0; i < ten.size(); ++i) ten[i].name = "trial " + std::to_string(i + 1);
  notebook_with(path, ten);
  return {{"home_ms", median_ms(5, [&](int) {
             workbench::AtHand nothing_at_hand;
             const auto home = workbench::home_of(nothing_at_hand, path);
             need(home && home->trials.size() == 10, "the first page failed");
             (void)wire::home_to_json(*home);
           })}};
}

}  // namespace

Outcome asking_the_app() {
  const WorkingFolder folder;
  const auto path = [&](const char* name) { return (folder.path() / name).string(); };
  const auto demo = measured_work([&] { return asked_of_the_demo(path("demo.keen")); });
  if (!demo) return demo.error();
  const auto home = measured_work([&] { return first_screen(path("many.keen")); });
  if (!home) return home.error();
  const auto file = folder.path() / "demo.csv";
  const auto trial = [] { return workbench::matting_bench(workbench::kMattingBenchSeed); };
  if (auto problem = write_trial(file, trial)) return problem;
  const auto peer = measured_peer({.interpreter = "Rscript",
                                   .file = "mixed_model.R",
                                   .words = {file.string(), "C", "A", "new matting"},
                                   .library = "nlme"});
  if (peer && !*peer) return peer->error();

  for (const auto& [what, name] : {std::pair("a first look at the demo's trial", "first_ms"),
                                   std::pair("the same for another margin", "margin_ms"),
                                   std::pair("the same for another level", "level_ms")}) {
    fmt::print("{}",
               in_words(Bar{.what = std::string(what) + ", median, ms",
                            .below = kAnsweredMs,
                            .measured = demo->findings.at(name)}));
  }
  fmt::print("{}",
             in_words(Bar{.what = "the first page of ten trials with 1,000 runs, cold, ms",
                          .below = kFirstScreenMs,
                          .measured = home->findings.at("home_ms")}));
  if (peer) {
    constexpr double kMsInSecond = 1000;
    const double theirs = kMsInSecond * (*peer)->findings.at("fit_cpu_s");
    fmt::print("  R, nlme, fits the demo's trial in {} ms: {} times as long as our first look\n",
               base::with_figures(theirs, 3),
               base::with_figures(theirs / demo->findings.at("first_ms"), 2));
  }
  return {};
}

}  // namespace keenfall::benchmarks
