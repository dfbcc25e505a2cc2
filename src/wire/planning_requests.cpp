#include "wire/planning_requests.h"

#include "wire/plan_reader.h"
#include "wire/request_reader.h"

#include <utility>

namespace keenfall::wire {

namespace {

constexpr NumberRange kAssumed{.words = "a number, 0 or more"};
constexpr NumberRange kAssumedOrUsual{.words = "a number, 0 or more, or null for the usual"};

SaidAssumptions assumptions_from(RequestReader& reader) {
  return {.half_keenness_cuts = reader.numbers_or_null("half_keenness_cuts", kAssumedOrUsual),
          .run_log_sd = reader.numbers_or_null("run_log_sd", kAssumedOrUsual),
          .shape = reader.number("shape", kAssumed),
          .true_ratio = reader.number("true_ratio", kAssumed),
          .start_reading = reader.number("start_reading", kAssumed),
          .start_log_sd = reader.number("start_log_sd", kAssumed),
          .block_log_sd = reader.number("block_log_sd", kAssumed),
          .specimen_log_sd = reader.number("specimen_log_sd", kAssumed),
          .spot_log_sd = reader.number("spot_log_sd", kAssumed),
          .reading_log_sd = reader.number("reading_log_sd", kAssumed)};
}

planning::BenchTimes times_from(RequestReader& reader) {
  planning::BenchTimes times;
  const auto said = [&reader](const char* field, double& number) {
    number = reader.number(field, kAssumed).value_or(number);
  };
  said("sharpening_minutes_per_run", times.sharpening_minutes_per_run);
  said("seconds_per_cut", times.seconds_per_cut);
  said("seconds_per_reading", times.seconds_per_reading);
  said("hours_per_evening", times.hours_per_evening);
  return times;
}

}  // namespace

base::ResultOrProblems<ArmsAsked> arms_asked_from(const std::string& body) {
  constexpr NumberRange kCuttings{.lowest = 1, .highest = 1e9, .words = "how many: 1 or more"};
  RequestReader reader(body);
  ArmsAsked asked;
  reader.require("blades", "a list of names");
  if (!reader.has("edge_choices")) reader.require("edges", "a list of edges, or edge_choices");
  reader.require("cuttings", kCuttings.words);
  asked.choices.blades = reader.texts("blades");
  for (RequestReader& edge : reader.objects("edges")) {
    asked.choices.edges.push_back(edge_from(edge));
  }
  if (auto choices = reader.object("edge_choices")) {
    asked.edge_choices = edge_choices_from(*choices);
    if (reader.has("edges")) {
      reader.add({.kind = base::ProblemKind::conflicting,
                  .sentence = "Edges are said twice, as a list and as choices.",
                  .place = {.column = "edges"},
                  .accepted = "“edges” or “edge_choices”"});
    }
  }
  asked.choices.cuttings =
      static_cast<std::size_t>(reader.whole("cuttings", kCuttings).value_or(1));
  asked.crossed = reader.flag("crossed").value_or(true);
  return unless_problems(reader, std::move(asked));
}

base::ResultOrProblems<planning::CheckpointsAsked> checkpoints_asked_from(const std::string& body) {
  RequestReader reader(body);
  planning::CheckpointsAsked asked;
  asked.half_keenness_cuts = reader.number("half_keenness_cuts", kAssumed);
  asked.gritty = reader.flag("gritty").value_or(false);
  asked.stop_level = reader.number("stop_level", kAssumed);
  return unless_problems(reader, std::move(asked));
}

base::ResultOrProblems<trials::Plan> plan_from_request(const std::string& body) {
  RequestReader reader(body);
  trials::Plan plan = plan_from(reader);
  return unless_problems(reader, std::move(plan));
}

base::ResultOrProblems<PlanAsked> plan_asked_from(const std::string& body) {
  RequestReader reader(body);
  PlanAsked asked;
  reader.require("plan", "the plan that is looked at");
  if (auto plan = reader.object("plan")) asked.plan = plan_from(*plan);
  asked.claims = claims_from(reader);
  if (auto said = reader.object("assumptions")) asked.assumptions = assumptions_from(*said);
  if (auto times = reader.object("bench_times")) asked.bench_times = times_from(*times);
  asked.is_rough = reader.flag("rough").value_or(false);
  return unless_problems(reader, std::move(asked));
}

base::ResultOrProblems<OwnScatterAsked> own_scatter_asked_from(const std::string& body) {
  RequestReader reader(body);
  reader.require("blade", "a blade, by name");
  reader.require("medium", "what it cuts, by name");
  OwnScatterAsked asked{.blade = reader.text("blade").value_or(""),
                        .medium = reader.text("medium").value_or("")};
  return unless_problems(reader, std::move(asked));
}

}  // namespace keenfall::wire
