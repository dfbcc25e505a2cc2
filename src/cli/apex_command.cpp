#include "cli/apex_command.h"

#include "cli/apex_list_text.h"
#include "cli/apex_text.h"
#include "cli/edge_request.h"
#include "cli/option_numbers.h"
#include "cli/own_things.h"
#include "cli/typed_options.h"
#include "cli/watched_work.h"
#include "cli/written_answer.h"
#include "wear/trial_plan_refusals.h"
#include "wire/simulation_json.h"
#include "workbench/reduced_curve.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr const char* kNoEdgeCut = "no edge was cut";

using Problems = std::vector<base::Problem>;

// An edge is one: every option of a kind that is given twice.
Problems more_than_one_edge(const TypedOptions& typed) {
  const TypedSimulation& simulated = typed.simulated;
  Problems problems;
  const auto once = [&problems](const std::string& option, std::size_t times) {
    if (times <= 1) return;
    problems.push_back({.kind = base::ProblemKind::conflicting,
                        .sentence = "apex cuts one edge: " + option + " can be said once.",
                        .place = {.column = option}});
  };
  once("--steel", simulated.steels.size());
  once("--medium", simulated.media.size() + simulated.schedules.size());
  once("--angle", simulated.angles.size());
  once("--finish", simulated.finishes.size());
  if (!typed.positionals.empty()) {
    problems.push_back(
        {.kind = base::ProblemKind::bad_value,
         .sentence = "apex takes options alone, not \"" + typed.positionals.front() + "\".",
         .place = {.column = "--", .found = typed.positionals.front()}});
  }
  return problems;
}

Outcome listed_catalogue(const workbench::ApexCatalogue& catalogue,
                         const TypedOptions& typed,
                         const Look& look) {
  if (typed.simulated.steels.empty()) return {.out = apex_list_text(catalogue, look)};
  const auto steel = workbench::find_steel(catalogue, typed.simulated.steels.front());
  if (!steel) return wrong_usage({steel.error()}, "apex");
  return {.out = apex_steel_text(*steel, look)};
}

struct ApexRequest {
  wear::EdgeQuestion question;
  std::optional<int> draws;  // over all plausible constants; none: not asked for
  unsigned threads = 1;
};

void read_draws(const TypedOptions& typed, ApexRequest& request, Problems& problems) {
  if (!typed.simulated.draws) return;
  const auto draws = draws_of(*typed.simulated.draws);
  if (!draws) {
    problems.push_back(draws.error());
    return;
  }
  request.draws = *draws;
}

// Or every problem of the command line at once.
base::ResultOrProblems<ApexRequest> apex_request(const TypedOptions& typed,
                                                 const workbench::ApexCatalogue& catalogue,
                                                 unsigned threads_at_hand) {
  Problems problems = more_than_one_edge(typed);
  ReadEdges read = read_edges(
      typed,
      catalogue,
      {.steels = {"X153CrMoV12"}, .media = {"uplifted sisal matting"}, .is_one_of_each = true},
      threads_at_hand);
  std::ranges::move(read.problems, std::back_inserter(problems));
  EdgeRequest& edges = read.request;
  ApexRequest request{.question = {.steel = std::move(edges.steels.front()),
                                   .work = std::move(edges.works.front()),
                                   .edge = std::move(edges.edges.front()),
                                   .edge_length_mm = edges.edge_length_mm,
                                   .seed = edges.seed},
                      .threads = edges.threads};
  request.question.cuts = edges.cuts.value_or(request.question.cuts);
  std::ranges::move(wear::problems_of(wear::trial_of(request.question)),
                    std::back_inserter(problems));
  read_draws(typed, request, problems);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return request;
}

// Of one medium: mixed work has no such curve, nor has a load that grows, nor a handful of cuts.
std::optional<wire::CurveInNumbers> curve_of(const wear::EdgeQuestion& question,
                                             const base::Executor& executor,
                                             const base::ProgressReport& report) {
  const auto curve = workbench::reduced_curve(wear::scenario_of(question),
                                              {.cuts = question.cuts, .seed = question.seed},
                                              executor,
                                              report);
  if (!curve || !curve->fitted.converged) return std::nullopt;
  return wire::CurveInNumbers{.computed = curve->computed, .fitted = curve->fitted};
}

base::Result<ApexAnswer> apex_answer(const ApexRequest& request,
                                     const base::Executor& executor,
                                     const base::ProgressReport& report) {
  const wear::EdgeQuestion& question = request.question;
  auto story = wear::edge_story(question, executor, report);
  if (!story) return base::failed(story.error());
  ApexAnswer answer{.story = std::move(*story), .curve = curve_of(question, executor, report)};
  if (!request.draws) return answer;
  auto plausible = wear::plausible_lives(wear::scenario_of(question),
                                         {.over = {.draws = *request.draws, .seed = question.seed}},
                                         executor,
                                         report);
  if (!plausible) return base::failed(plausible.error());
  answer.plausible = std::move(*plausible);
  return answer;
}

Outcome apex_told(const wear::EdgeQuestion& question,
                  const ApexAnswer& found,
                  const TypedOptions& typed,
                  const Surroundings& around) {
  WrittenAnswer answer{.text = apex_text(question, found, around.look), .json = {}};
  if (typed.json) {
    answer.json = wire::apex_to_json({.program_version = around.program_version,
                                      .question = question,
                                      .story = found.story,
                                      .curve = found.curve,
                                      .plausible = found.plausible});
  }
  return delivered(answer, typed.json);
}

}  // namespace

Outcome apex_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::apex, words);
  if (!typed) return wrong_usage(typed.error(), "apex");
  const auto catalogue = workbench::apex_catalogue(catalogue_files(*typed));
  if (!catalogue) return refused(catalogue.error(), kNoEdgeCut);
  if (typed->simulated.list) return listed_catalogue(*catalogue, *typed, surroundings.look);
  const auto request = apex_request(*typed, *catalogue, surroundings.threads_at_hand);
  if (!request) return wrong_usage(request.error(), "apex");
  const JudgeRequest how{.threads = request->threads, .quiet = typed->quiet};
  const auto found = watched(
      how, surroundings, [&](const base::Executor& executor, const base::ProgressReport& report) {
        return apex_answer(*request, executor, report);
      });
  if (!found) {
    const bool was_stopped = found.error().kind == base::ProblemKind::interrupted;
    return was_stopped ? refused({found.error()}, kNoEdgeCut)
                       : wrong_usage({found.error()}, "apex");
  }
  return with_note_of_own(apex_told(request->question, *found, *typed, surroundings),
                          catalogue->in_place_of_known,
                          surroundings.look);
}

}  // namespace keenfall::cli
