// The program with a made-up engine: tables are read for real, the judgement is made by hand. The
// environment variable STAND_IN makes it slow, broken or unusable.
#include "cli/process.h"
#include "exchange/long_table.h"
#include "wire/made_judgement.h"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

namespace {

using namespace keenfall;

bool is_asked_to_be(const char* what) {
  const char* wish = std::getenv("STAND_IN");
  return wish != nullptr && std::string(wish) == what;
}

// Works until it is told to stop, a minute at most.
cli::Judgements worked_for_long(const base::ProgressReport& report) {
  std::fputs("working\n", stderr);
  constexpr int kSteps = 6000;
  for (int step = 0; step < kSteps; ++step) {
    const bool goes_on = report({.fraction_done = 0.5, .stage = "fitting the curves"});
    if (!goes_on) {
      return tl::unexpected(std::vector<base::Problem>{
          {.kind = base::ProblemKind::interrupted, .sentence = "Stopped."}});
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  throw std::logic_error("nobody stopped the stand-in");
}

cli::Judgements made(const workbench::JudgeOptions& options, const base::ProgressReport& report) {
  if (is_asked_to_be("slow")) return worked_for_long(report);
  if (is_asked_to_be("broken")) throw std::logic_error("a promise was broken");
  verdicts::Judgement judgement = wire::testing::made_judgement();
  judgement.worth_it_margin = options.worth_it_margin;
  judgement.fit.seed = options.seed.number;
  if (is_asked_to_be("unusable")) {
    judgement.comparisons.clear();
    judgement.fit.usable = false;
    judgement.fit.reasons = {"R-hat is 1.2, and at most 1.01 is needed."};
  }
  return std::vector<verdicts::Judgement>{judgement};
}

cli::Judgements judge_tables(std::span<const std::string> paths,
                             const workbench::JudgeOptions& options,
                             const base::Executor&,
                             const base::ProgressReport& report) {
  const auto trial = exchange::take_tables(paths, options.table);
  if (!trial) return tl::unexpected(trial.error());
  return made(options, report);
}

cli::Judgements judge_trial(const trials::Trial&,
                            const workbench::JudgeOptions& options,
                            const base::Executor&,
                            const base::ProgressReport& report) {
  return made(options, report);
}

trials::Trial one_run(base::Seed) {
  return {.name = "matting bench",
          .blades = {{.name = "A"}},
          .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}},
          .runs = {{.name = "1",
                    .arm = {.blade = "A", .medium = {.name = "new matting"}},
                    .readings = {{.reading = 104}, {.cuts = 30, .reading = 208}}}}};
}

}  // namespace

int main(int argument_count, char** arguments) {
  return cli::run_as_process(
      argument_count,
      arguments,
      {.judge_tables = judge_tables, .judge_trial = judge_trial, .matting_bench = one_run});
}
