#include "cli/predict_request.h"

#include "cli/edge_request.h"
#include "cli/option_numbers.h"
#include "materials/quantity.h"
#include "materials/units.h"

#include <algorithm>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr double kUsualApexAngleDeg = 20;
constexpr const char* kBladeWords =
    "a steel, then its hardness and its angle if need be: \"X153CrMoV12 61HRC 20deg-per-side\"";

std::vector<std::string> words_of(std::string_view text) {
  std::istringstream stream{std::string(text)};
  std::vector<std::string> words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

// What was said of a blade beside its steel.
struct Said {
  std::string steel;
  std::optional<double> hardness_hrc;
  std::optional<double> angle_per_side_deg;
};

base::Result<Said> said_of_blade(std::string_view text) {
  Said said;
  for (const std::string& word : words_of(text)) {
    const auto quantity = materials::parse_quantity(word);
    const materials::Unit* unit = quantity ? materials::find_unit(quantity->unit) : nullptr;
    if (unit == nullptr || said.steel.empty()) {
      said.steel += (said.steel.empty() ? "" : " ") + word;
    } else if (unit->dimension == materials::Dimension::angle) {
      const auto angle = materials::convert(quantity->number, quantity->unit, "deg-per-side");
      if (!angle) return base::failed(angle.error());
      said.angle_per_side_deg = *angle;
    } else {
      const auto hrc = materials::convert(quantity->number, quantity->unit, "HRC");
      if (!hrc) return base::failed(hrc.error());
      said.hardness_hrc = *hrc;
    }
  }
  return said;
}

base::Problem about_blade(base::Problem problem, std::string_view words) {
  problem.place.column = "blade";
  if (problem.place.found.empty()) problem.place.found = std::string(words);
  return problem;
}

template <class Found>
std::optional<Found> taken(base::Result<Found> found, std::vector<base::Problem>& problems) {
  if (found) return std::move(*found);
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
                        .place = {.column = "blade"},
                        .accepted = kBladeWords});
    return;
  }
  const auto a = taken(predicted_blade(catalogue, typed.positionals[0]), problems);
  const auto b = taken(predicted_blade(catalogue, typed.positionals[1]), problems);
  if (a) asked.a = *a;
  if (b) asked.b = *b;
}

void read_medium_and_finish(const TypedOptions& typed,
                            const workbench::ApexCatalogue& catalogue,
                            wear::PredictionAsked& asked,
                            std::vector<base::Problem>& problems) {
  const TypedSimulation& said = typed.simulated;
  const auto medium = taken(meant({.option = "--medium",
                                   .file_option = "--media",
                                   .typed = said.media,
                                   .at_hand = names_of_things(catalogue.media),
                                   .own = catalogue.own_media,
                                   .usual = {"new sisal matting"},
                                   .is_one = true}),
                            problems);
  const auto finish = taken(meant({.option = "--finish",
                                   .file_option = "--finishes",
                                   .typed = said.finishes,
                                   .at_hand = names_of_things(catalogue.finishes),
                                   .own = catalogue.own_finishes,
                                   .usual = {"fine"},
                                   .is_one = true}),
                            problems);
  if (medium) {
    const auto found = taken(workbench::find_medium(catalogue, medium->front()), problems);
    if (found) asked.medium = *found;
  }
  if (finish) {
    const auto found = taken(workbench::find_finish(catalogue, finish->front()), problems);
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
  const auto said = said_of_blade(words);
  if (!said) return base::failed(about_blade(said.error(), words));
  auto steel = workbench::find_steel(catalogue, said->steel);
  if (steel && said->hardness_hrc) steel = materials::at_hardness(*steel, *said->hardness_hrc);
  if (!steel) return base::failed(about_blade(steel.error(), words));
  return wear::PredictedBlade{
      .steel = *steel, .apex_angle = {said->angle_per_side_deg.value_or(kUsualApexAngleDeg)}};
}

base::ResultOrProblems<PredictRequest> predict_request(const TypedOptions& typed,
                                                       const workbench::ApexCatalogue& catalogue,
                                                       unsigned threads_at_hand) {
  constexpr long kMost = 100000;
  PredictRequest request{.threads = std::max(1U, threads_at_hand)};
  std::vector<base::Problem> problems;
  wear::PredictionAsked& asked = request.asked;
  read_blades(typed, catalogue, asked, problems);
  read_medium_and_finish(typed, catalogue, asked, problems);
  read_reading(typed, asked, problems);
  const TypedSimulation& said = typed.simulated;
  if (said.runs) {
    const auto runs = taken(count_of("--runs", *said.runs, {1, kMost}), problems);
    asked.life.runs = static_cast<int>(runs.value_or(1));
  }
  if (said.draws) {
    const auto draws = taken(count_of("--draws", *said.draws, {2, kMost}), problems);
    asked.over.draws = static_cast<int>(draws.value_or(2));
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
