#include "cli/apex_command.h"

#include "cli/apex_list_text.h"
#include "cli/apex_text.h"
#include "cli/edge_request.h"
#include "cli/typed_options.h"
#include "cli/watched_work.h"
#include "cli/written_answer.h"
#include "wire/simulation_json.h"
#include "workbench/reduced_curve.h"

#include <optional>
#include <utility>
#include <variant>

namespace keenfall::cli {

namespace {

constexpr const char* kNoEdgeCut = "no edge was cut";

// An edge is one: the first option of a kind that is given twice.
std::optional<base::Problem> more_than_one_edge(const TypedOptions& typed) {
  const TypedSimulation& simulated = typed.simulated;
  const auto refuse = [](const std::string& option) {
    return base::Problem{.kind = base::ProblemKind::conflicting,
                         .sentence = "apex cuts one edge: " + option + " can be said once.",
                         .place = {.column = option}};
  };
  if (simulated.steels.size() > 1) return refuse("--steel");
  if (simulated.media.size() + simulated.schedules.size() > 1) return refuse("--medium");
  if (simulated.angles.size() > 1) return refuse("--angle");
  if (simulated.finishes.size() > 1) return refuse("--finish");
  if (!typed.positionals.empty()) {
    return base::Problem{
        .kind = base::ProblemKind::bad_value,
        .sentence = "apex takes options alone, not \"" + typed.positionals.front() + "\".",
        .place = {.column = "--", .found = typed.positionals.front()}};
  }
  return std::nullopt;
}

Outcome listed_catalogue(const workbench::ApexCatalogue& catalogue,
                         const TypedOptions& typed,
                         const Look& look) {
  if (typed.simulated.steels.empty()) return {.out = apex_list_text(catalogue, look)};
  const auto steel = workbench::find_steel(catalogue, typed.simulated.steels.front());
  if (!steel) return wrong_usage({steel.error()}, "apex");
  return {.out = apex_steel_text(*steel, look)};
}

wear::EdgeQuestion question_of(EdgeRequest request) {
  wear::EdgeQuestion question{.steel = std::move(request.steels.front()),
                              .work = std::move(request.works.front()),
                              .edge = std::move(request.edges.front()),
                              .edge_length_mm = request.edge_length_mm,
                              .seed = request.seed};
  question.cuts = request.cuts.value_or(question.cuts);
  return question;
}

// Of one medium: mixed work has no such curve, nor has a load that grows, nor a handful of cuts.
std::optional<wire::CurveInNumbers> curve_of(const wear::EdgeQuestion& question,
                                             const base::Executor& executor,
                                             const base::ProgressReport& report) {
  if (question.work.steps.size() != 1) return std::nullopt;
  const auto* medium = std::get_if<wear::AbrasiveMedium>(&question.work.steps.front().what);
  if (medium == nullptr) return std::nullopt;
  const wear::ApexScenario scenario{.steels = {question.steel},
                                    .medium = *medium,
                                    .edge = {.finish = question.edge.finish,
                                             .apex_angle = question.edge.apex_angle,
                                             .length_mm = question.edge_length_mm}};
  const auto curve = workbench::reduced_curve(
      scenario, {.cuts = question.cuts, .seed = question.seed}, executor, report);
  if (!curve || !curve->fitted.converged) return std::nullopt;
  return wire::CurveInNumbers{.computed = curve->computed, .fitted = curve->fitted};
}

struct ApexAnswer {
  wear::EdgeStory story;
  std::optional<wire::CurveInNumbers> curve;
};

base::Result<ApexAnswer> apex_answer(const wear::EdgeQuestion& question,
                                     const base::Executor& executor,
                                     const base::ProgressReport& report) {
  auto story = wear::edge_story(question, executor, report);
  if (!story) return base::failed(story.error());
  return ApexAnswer{.story = std::move(*story), .curve = curve_of(question, executor, report)};
}

Outcome apex_told(const wear::EdgeQuestion& question,
                  const wear::EdgeStory& story,
                  const std::optional<wire::CurveInNumbers>& curve,
                  const TypedOptions& typed,
                  const Surroundings& around) {
  WrittenAnswer answer{.text = apex_text(question, story, curve, around.look), .json = {}};
  if (typed.json) {
    answer.json = wire::apex_to_json({.program_version = around.program_version,
                                      .question = question,
                                      .story = story,
                                      .curve = curve});
  }
  return delivered(answer, typed.json);
}

}  // namespace

Outcome apex_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::apex, words);
  if (!typed) return wrong_usage(typed.error(), "apex");
  if (const auto problem = more_than_one_edge(*typed)) return wrong_usage({*problem}, "apex");
  const auto catalogue = workbench::apex_catalogue(catalogue_files(*typed));
  if (!catalogue) return refused(catalogue.error(), kNoEdgeCut);
  if (typed->simulated.list) return listed_catalogue(*catalogue, *typed, surroundings.look);
  auto request = edge_request(*typed,
                              *catalogue,
                              {.steels = {"X153CrMoV12"}, .media = {"uplifted sisal matting"}},
                              surroundings.threads_at_hand);
  if (!request) return wrong_usage(request.error(), "apex");
  const JudgeRequest how{.threads = request->threads, .quiet = typed->quiet};
  const wear::EdgeQuestion question = question_of(std::move(*request));
  const auto found = watched(
      how, surroundings, [&](const base::Executor& executor, const base::ProgressReport& report) {
        return apex_answer(question, executor, report);
      });
  if (!found) {
    const bool was_stopped = found.error().kind == base::ProblemKind::interrupted;
    return was_stopped ? refused({found.error()}) : wrong_usage({found.error()}, "apex");
  }
  return apex_told(question, found->story, found->curve, *typed, surroundings);
}

}  // namespace keenfall::cli
