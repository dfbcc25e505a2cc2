// keenfall_trust: measures how often the engines are right, and shows it in tables.
#include "cli/exit_codes.h"
#include "cli/interruption.h"
#include "cli/progress_line.h"
#include "trust/held_folder.h"
#include "trust/request.h"
#include "trust/results.h"
#include "trust/running.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <span>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace {

using namespace keenfall;
using trust::Running;

void print_list() {
  std::string cell;
  for (const trust::Experiment& experiment : trust::all_experiments(1'000'000)) {
    if (experiment.cell == cell) continue;
    cell = experiment.cell;
    fmt::print("  {:<12} {:<23} {}\n", experiment.kind, cell, experiment.about);
  }
}

bool is_chosen(const trust::Experiment& experiment, const std::vector<std::string>& names) {
  return names.empty() || std::ranges::any_of(names, [&](const std::string& name) {
           return name == experiment.name || name == experiment.cell || name == experiment.kind;
         });
}

double seconds_now() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

void write_progress(const std::string& text) {
  fmt::print(stderr, "{}", text);
  (void)std::fflush(stderr);
}

// Everything there is, with what is kept of it.
std::vector<Running> everything(const trust::Request& request) {
  std::vector<Running> all;
  const std::filesystem::path results = std::filesystem::path(request.folder) / "results";
  for (trust::Experiment& experiment : trust::all_experiments(request.most_trials)) {
    trust::KeptBatches kept(results, experiment, {.code = request.code, .commit = request.commit});
    all.push_back({.experiment = std::move(experiment), .kept = std::move(kept)});
  }
  return all;
}

bool run_chosen(const trust::Request& request, std::vector<Running>& all) {
  std::vector<Running*> chosen;
  int anew = 0;
  for (Running& run : all) {
    if (!is_chosen(run.experiment, request.names)) continue;
    chosen.push_back(&run);
    if (run.kept.others_were_there()) ++anew;
  }
  if (anew > 0) {
    fmt::print(
        "{} of {} experiments were measured by other code or another definition: those begin "
        "anew.\n",
        anew,
        chosen.size());
  }
  cli::listen_for_interruption();
  const bool watched = isatty(STDERR_FILENO) == 1;
  cli::ProgressLine line(watched ? write_progress : std::function<void(const std::string&)>(),
                         seconds_now);
  const bool finished =
      trust::run_all(chosen, request.threads, [&line](const base::Progress& progress) {
        line.show(progress);
        return !cli::is_interrupted();
      });
  line.erase();
  return finished;
}

void tell(const trust::Request& request, const std::vector<Running>& all) {
  for (const trust::ResultText& result : trust::result_texts(all)) {
    const std::filesystem::path path = std::filesystem::path(request.folder) / result.file;
    std::ofstream out;
    out.exceptions(std::ios::badbit | std::ios::failbit);
    out.open(path, std::ios::trunc);
    out << result.text;
    fmt::print("\n{}\n\n{}", path.string(), result.text);
  }
}

cli::ExitCode answer(const trust::Request& request) {
  const auto held = trust::HeldFolder::hold(request.folder);
  if (!held) {
    fmt::print(stderr, "{}\n", base::in_words(held.error()));
    return cli::ExitCode::file_trouble;
  }
  try {
    std::vector<Running> all = everything(request);
    const bool finished = run_chosen(request, all);
    tell(request, all);
    if (finished) return cli::ExitCode::answered;
    fmt::print(stderr, "Stopped; the same command goes on from here.\n");
    return cli::ExitCode::stopped;
  } catch (const std::ios_base::failure& failure) {  // filesystem errors stand apart
    fmt::print(stderr, "Results cannot be kept in {}: {}\n", request.folder, failure.what());
  } catch (const std::filesystem::filesystem_error& failure) {
    fmt::print(stderr, "Results cannot be kept in {}: {}\n", request.folder, failure.what());
  }
  return cli::ExitCode::file_trouble;
}

}  // namespace

int main(int argument_count, char** arguments) {
  const std::vector<std::string> words(arguments + 1, arguments + argument_count);
  const auto request = trust::request_of(words, std::max(1U, std::thread::hardware_concurrency()));
  if (!request) {
    for (const base::Problem& problem : request.error()) {
      fmt::print(stderr, "{}\n", base::in_words(problem));
    }
    return static_cast<int>(cli::ExitCode::wrong_usage);
  }
  if (request->list) {
    print_list();
    return static_cast<int>(cli::ExitCode::answered);
  }
  return static_cast<int>(answer(*request));
}
