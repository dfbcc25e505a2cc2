#include "cli/simulate_request.h"

#include "base/plain_number.h"
#include "cli/option_numbers.h"
#include "wear/trial_plan_refusals.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

using Problems = std::vector<base::Problem>;
using wear::PracticeScatter;

struct NamedScatter {
  std::string_view name;
  double PracticeScatter::*log_sd;
};

constexpr std::array kScatters{NamedScatter{"run", &PracticeScatter::run_log_sd},
                               NamedScatter{"block", &PracticeScatter::block_log_sd},
                               NamedScatter{"start", &PracticeScatter::start_log_sd},
                               NamedScatter{"spot", &PracticeScatter::spot_log_sd},
                               NamedScatter{"reading", &PracticeScatter::reading_log_sd}};

// "run=0.3,reading=0.12", or "none" for no scatter at all.
void read_scatter(const std::string& text, PracticeScatter& scatter, Problems& problems) {
  if (text == "none") {
    scatter = {0, 0, 0, 0, 0};
    return;
  }
  std::size_t begin = 0;
  while (begin <= text.size()) {
    const std::size_t comma = std::min(text.find(',', begin), text.size());
    const std::string part = text.substr(begin, comma - begin);
    const std::size_t equals = std::min(part.find('='), part.size());
    const auto named =
        std::ranges::find(kScatters, std::string_view(part).substr(0, equals), &NamedScatter::name);
    const auto log_sd = number_of("--scatter", part.substr(std::min(equals + 1, part.size())));
    if (named == kScatters.end() || !log_sd) {
      problems.push_back({.kind = base::ProblemKind::bad_value,
                          .sentence = "--scatter does not take \"" + part + "\".",
                          .place = {.column = "--scatter", .found = part},
                          .accepted = "none, or names with the sd of a log, as in "
                                      "run=0.2,block=0.06,start=0.06,spot=0.04,reading=0.09"});
    } else {
      scatter.*named->log_sd = *log_sd;
    }
    begin = comma + 1;
  }
}

// Into an int, which every range of a plan fits; what does not is refused there as the largest.
void read_count(const std::string& option,
                const std::optional<std::string>& text,
                int& count,
                Problems& problems) {
  if (!text) return;
  const auto number = whole_number_of(option, *text);
  if (!number) {
    problems.push_back(number.error());
    return;
  }
  constexpr long kMost = std::numeric_limits<int>::max();
  count = static_cast<int>(std::clamp(*number, -kMost, kMost));
}

void read_reading(const TypedOptions& typed, wear::TrialPlan& plan, Problems& problems) {
  if (!typed.reading || *typed.reading == "push") return;
  if (*typed.reading == "slice") {
    plan.reading = wear::ApexReading::slice;
    return;
  }
  problems.push_back({.kind = base::ProblemKind::bad_value,
                      .sentence = "--reading is push or slice, not \"" + *typed.reading + "\".",
                      .place = {.column = "--reading", .found = *typed.reading},
                      .accepted = "push (thread push, gf) or slice (cord draw, mm)"});
}

// "A, B and 2 more": a name, and no list without end.
std::string few_of(const std::vector<std::string>& names) {
  constexpr std::size_t kMostNamed = 3;
  std::string words;
  for (std::size_t i = 0; i < std::min(names.size(), kMostNamed); ++i) {
    words += (i == 0 ? "" : ", ") + names[i];
  }
  if (names.size() > kMostNamed) {
    words += " and " + std::to_string(names.size() - kMostNamed) + " more";
  }
  return words;
}

// What it is: steels, what is cut, edges, seed.
std::string usual_name(const wear::TrialPlan& plan) {
  std::vector<std::string> edges;
  for (const wear::TrialEdge& edge : plan.edges) {
    edges.push_back(base::plain_number(edge.apex_angle.deg) + " deg " + edge.finish_name);
  }
  return "simulated " + few_of(names_of_things(plan.steels)) + "; " +
         few_of(names_of_things(plan.works)) + "; " + few_of(edges) + "; seed " +
         std::to_string(plan.seed.number);
}

base::Problem not_both_ways(const std::string& one, const std::string& other) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = one + " and " + other + " cannot both be asked for.",
          .place = {.column = one}};
}

void read_where_to(const TypedOptions& typed, SimulateRequest& request, Problems& problems) {
  request.out = typed.out.value_or("");
  request.notebook = typed.simulated.notebook.value_or("");
  request.truth = typed.simulated.truth;
  if (typed.out && typed.simulated.notebook) {
    problems.push_back(not_both_ways("--out", "--notebook"));
  }
  if (!typed.positionals.empty()) {
    problems.push_back(
        {.kind = base::ProblemKind::bad_value,
         .sentence = "simulate takes options alone, not \"" + typed.positionals.front() +
                     "\". A medium with blanks in its name: --medium=\"new sisal matting\"",
         .place = {.column = "--", .found = typed.positionals.front()}});
  }
}

}  // namespace

base::ResultOrProblems<SimulateRequest> simulate_request(const TypedOptions& typed,
                                                         const workbench::ApexCatalogue& catalogue,
                                                         unsigned threads_at_hand) {
  SimulateRequest request;
  wear::TrialPlan& plan = request.plan;
  ReadEdges edges = read_edges(
      typed,
      catalogue,
      {.steels = {"X153CrMoV12", "C75S"}, .media = {"new sisal matting", "uplifted sisal matting"}},
      threads_at_hand);
  Problems problems = std::move(edges.problems);
  plan.steels = std::move(edges.request.steels);
  plan.works = std::move(edges.request.works);
  plan.edges = std::move(edges.request.edges);
  plan.longest_cuts = edges.request.cuts.value_or(plan.longest_cuts);
  plan.edge_length_mm = edges.request.edge_length_mm;
  plan.seed = edges.request.seed;
  request.threads = edges.request.threads;
  const TypedSimulation& simulated = typed.simulated;
  read_count("--runs", simulated.runs, plan.runs_each, problems);
  plan.blocks = plan.runs_each;
  read_count("--blocks", simulated.blocks, plan.blocks, problems);
  read_count("--repeats", simulated.repeats, plan.repeats, problems);
  if (typed.stop_level) {
    const auto level = number_of("--stop-level", *typed.stop_level);
    if (level) {
      plan.stop_level = *level;
    } else {
      problems.push_back(level.error());
    }
  }
  if (simulated.scatter) read_scatter(*simulated.scatter, plan.scatter, problems);
  read_reading(typed, plan, problems);
  read_where_to(typed, request, problems);
  plan.name = typed.trial.value_or(usual_name(plan));
  std::ranges::copy(wear::problems_of(plan), std::back_inserter(problems));
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return request;
}

}  // namespace keenfall::cli
