#include "cli/predict_request.h"

#include "cli/edge_request.h"
#include "cli/option_numbers.h"
#include "cli/steel_words.h"
#include "workbench/work_words.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr trials::PerSideAngle kUsualApexAngle = {.deg = 20};
constexpr const char* kBladeWords =
    "a steel, then its hardness and its angle if need be: \"X153CrMoV12 61HRC 20deg-per-side\"";

base::Problem about_blade(base::Problem problem, std::string_view words) {
  problem.place.column = "--";
  problem.sentence = "blade “" + std::string(words) + "”: " + problem.sentence;
  return problem;
}

template <class Found>
std::optional<Found> taken(base::Result<Found> found,
                           std::vector<base::Problem>& problems,
                           const std::string& option = "") {
  if (found) return std::move(*found);
  if (!option.empty()) found.error() = under_option(found.error(), option);
  problems.push_back(std::move(found.error()));
  return std::nullopt;
}

void read_blades(const TypedOptions& typed,
                 const workbench::ApexCatalogue& catalogue,
                 wear::PredictionAsked& asked,
                 std::vector<base::Problem>& problems) {
  if (typed.positionals.size() != 2) {
    problems.push_back({.kind = base::ProblemKind::missing,
                        .sentence = "predict compares two blades; " +
                                    std::to_string(typed.positionals.size()) + " were named.",
                        .place = {.column = "--"},
                        .accepted = kBladeWords});
    return;
  }
  const auto a = taken(predicted_blade(catalogue, typed.positionals[0]), problems);
  const auto b = taken(predicted_blade(catalogue, typed.positionals[1]), problems);
  if (a) asked.a = *a;
  if (b) asked.b = *b;
}

// One medium, or mixed work in its place.
void read_work(const TypedOptions& typed,
               const workbench::ApexCatalogue& catalogue,
               wear::PredictionAsked& asked,
               std::vector<base::Problem>& problems) {
  const TypedSimulation& said = typed.simulated;
  if (!said.schedules.empty()) {
    if (!said.media.empty()) {
      problems.push_back({.kind = base::ProblemKind::conflicting,
                          .sentence = "--schedule says what is cut, and so does --medium.",
                          .place = {.column = "--schedule"},
                          .accepted = "one of them"});
    }
    const auto work =
        taken(workbench::work_in_words(said.schedules.front(), catalogue), problems, "--schedule");
    if (work) asked.work = *work;
    return;
  }
  const auto medium = taken(meant({.option = "--medium",
                                   .file_option = "--media",
                                   .typed = said.media,
                                   .at_hand = names_of_things(catalogue.media),
                                   .own = catalogue.own_media,
                                   .usual = {"new sisal matting"},
                                   .is_one = true}),
                            problems);
  if (!medium) return;
  const auto found =
      taken(workbench::find_medium(catalogue, medium->front()), problems, "--medium");
  if (found) asked.work = wear::work_in(*found);
}

void read_finish(const TypedOptions& typed,
                 const workbench::ApexCatalogue& catalogue,
                 wear::PredictionAsked& asked,
                 std::vector<base::Problem>& problems) {
  const TypedSimulation& said = typed.simulated;
  const auto finish = taken(meant({.option = "--finish",
                                   .file_option = "--finishes",
                                   .typed = said.finishes,
                                   .at_hand = names_of_things(catalogue.finishes),
                                   .own = catalogue.own_finishes,
                                   .usual = {"fine"},
                                   .is_one = true}),
                            problems);
  if (finish) {
    const auto found =
        taken(workbench::find_finish(catalogue, finish->front()), problems, "--finish");
    if (!found) return;
    asked.finish_name = found->name;
    asked.finish = found->finish;
  }
}

void read_reading(const TypedOptions& typed,
                  wear::PredictionAsked& asked,
                  std::vector<base::Problem>& problems) {
  if (!typed.reading || *typed.reading == "push") return;
  if (*typed.reading == "slice") {
    asked.life.reading = wear::ApexReading::slice;
    return;
  }
  problems.push_back(
      {.kind = base::ProblemKind::bad_value,
       .sentence = "--reading must be push or slice, not \"" + *typed.reading + "\".",
       .place = {.column = "--reading", .found = *typed.reading},
       .accepted = "push (a thread pushed through) or slice (a draw)"});
}

}  // namespace

base::Result<wear::PredictedBlade> predicted_blade(const workbench::ApexCatalogue& catalogue,
                                                   std::string_view words) {
  const auto blade = steel_in_words(catalogue, words);
  if (!blade) return base::failed(about_blade(blade.error(), words));
  return wear::PredictedBlade{.steel = blade->steel,
                              .apex_angle = blade->angle.value_or(kUsualApexAngle)};
}

base::ResultOrProblems<PredictRequest> predict_request(const ReadOptions& read,
                                                       const workbench::ApexCatalogue& catalogue,
                                                       unsigned threads_at_hand) {
  const TypedOptions& typed = read.typed;
  constexpr long kMost = 100000;
  PredictRequest request{.threads = std::max(1U, threads_at_hand)};
  std::vector<base::Problem> problems = read.unknown;
  wear::PredictionAsked& asked = request.asked;
  read_blades(typed, catalogue, asked, problems);
  read_work(typed, catalogue, asked, problems);
  read_finish(typed, catalogue, asked, problems);
  read_reading(typed, asked, problems);
  const TypedSimulation& said = typed.simulated;
  if (said.runs) {
    const auto runs = taken(count_of("--runs", *said.runs, {1, kMost}), problems);
    asked.life.runs = static_cast<int>(runs.value_or(1));
  }
  if (said.draws) {
    asked.over.draws = taken(draws_of(*said.draws), problems).value_or(asked.over.draws);
  }
  if (typed.threads) {
    request.threads = taken(threads_of("--threads", *typed.threads), problems).value_or(1);
  }
  if (typed.seed) {
    if (const auto seed = taken(seed_of("--seed", *typed.seed), problems)) {
      asked.over.seed = *seed;
      asked.life.seed = *seed;
    }
  }
  if (!problems.empty()) return tl::unexpected(problems);
  return request;
}

}  // namespace keenfall::cli
