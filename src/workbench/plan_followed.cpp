#include "workbench/plan_followed.h"

#include "base/plain_number.h"
#include "base/shell_word.h"
#include "notebook/plan_text.h"
#include "workbench/arms_alike.h"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <iterator>
#include <set>
#include <utility>

namespace keenfall::workbench {

namespace {

using trials::Arm;
using trials::Run;

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}
std::string runs_in_words(std::size_t count) { return counted(count, "run", "runs"); }
std::string are_so_many(std::size_t count) {
  return runs_in_words(count) + (count == 1 ? " was" : " were");
}

Arm arm_planned(const trials::Plan& plan, const trials::PlannedArm& planned) {
  const trials::PlannedCutting& cutting = plan.cuttings.at(planned.cutting);
  return {.blade = planned.blade,
          .edge = planned.edge,
          .medium = cutting.medium,
          .method = cutting.method};
}

std::string words_of_arm(const Arm& arm, const materials::ToldIn& told) {
  const std::string edge = in_words(arm.edge, told);
  const std::string& condition = arm.medium.condition;
  return arm.blade + (edge.empty() ? "" : " (" + edge + ")") + " on " + arm.medium.name +
         (condition.empty() ? "" : ", " + condition);
}

std::vector<double> cuts_read_in(const Run& run) {
  std::set<double> cuts;
  for (const trials::Reading& reading : run.readings) cuts.insert(reading.cuts);
  return {cuts.begin(), cuts.end()};
}

class Comparing {
 public:
  Comparing(const notebook::KeptPlan& kept,
            const trials::Trial& done,
            const materials::ToldIn& told)
      : kept_(kept), plan_(kept.plan), done_(done), told_(told) {
    for (const trials::PlannedArm& arm : plan_.arms) planned_.push_back(arm_planned(plan_, arm));
    for (const Run& run : done_.runs) places_.push_back(place_of(run.arm));
  }

  std::vector<std::string> sentences() {
    on_sealing();
    on_reading();
    on_arms();
    on_runs();
    on_checkpoints();
    on_order();
    return std::move(sentences_);
  }

 private:
  void say(std::string sentence) { sentences_.push_back(std::move(sentence)); }

  // Of a planned arm; nothing where none was.
  [[nodiscard]] std::optional<std::size_t> place_of(const Arm& arm) const {
    auto found = std::ranges::find(planned_, arm);
    if (found == planned_.end()) {
      found = std::ranges::find_if(planned_,
                                   [&](const Arm& planned) { return may_be_one(planned, arm); });
    }
    if (found == planned_.end()) return std::nullopt;
    return static_cast<std::size_t>(found - planned_.begin());
  }

  void on_sealing() {
    if (kept_.runs_read_before == 0) return;
    const auto count = static_cast<std::size_t>(kept_.runs_read_before);
    say("The plan was sealed when " + runs_in_words(count) + " had been read already.");
  }

  void on_reading() {
    if (done_.series.empty()) return;
    const trials::ReadingKind* const known = trials::find_reading_kind(plan_.reading.kind);
    const std::string kind = known == nullptr ? plan_.reading.kind : known->name;
    const bool is_read = std::ranges::any_of(
        done_.series,
        [&](const trials::ReadingSeries& series) { return series.kind.name == kind; });
    if (is_read) return;
    say("Planned was a " + (known == nullptr ? kind : known->words) + "; what was read is a " +
        done_.series.front().kind.words + ".");
  }

  void on_arms() {
    std::vector<Arm> others;
    for (std::size_t r = 0; r < done_.runs.size(); ++r) {
      const Arm& arm = done_.runs[r].arm;
      if (!places_[r] && std::ranges::count(others, arm) == 0) others.push_back(arm);
    }
    for (const Arm& arm : others) {
      const auto runs = std::ranges::count(done_.runs, arm, &Run::arm);
      say("Not planned: " + words_of_arm(arm, told_) + ", " +
          runs_in_words(static_cast<std::size_t>(runs)) + ".");
    }
  }

  [[nodiscard]] std::size_t runs_planned_of(std::size_t arm) const {
    if (plan_.runs.empty()) return static_cast<std::size_t>(plan_.runs_each);
    return static_cast<std::size_t>(std::ranges::count(plan_.runs, arm, &trials::PlannedRun::arm));
  }

  void on_runs() {
    for (std::size_t arm = 0; arm < planned_.size(); ++arm) {
      std::size_t cut = 0;
      std::size_t voided = 0;
      for (std::size_t r = 0; r < done_.runs.size(); ++r) {
        if (places_[r] != arm) continue;
        (done_.runs[r].voided_reason ? voided : cut) += 1;
      }
      const std::size_t planned = runs_planned_of(arm);
      if (cut == planned) continue;
      say("Of " + words_of_arm(planned_[arm], told_) + " " + are_so_many(planned) +
          " planned and " + (cut == 0 ? "none" : std::to_string(cut)) +
          (cut < 2 ? " counts" : " count") +
          (voided == 0 ? "." : ", besides " + counted(voided, "voided one.", "voided ones.")));
    }
  }

  enum class Checkpoints { as_planned, elsewhere, left_out };

  // A run that ends early is as planned up to there.
  [[nodiscard]] Checkpoints checkpoints_of(const Run& run, std::size_t arm) const {
    const auto& planned = plan_.cuttings.at(plan_.arms.at(arm).cutting).checkpoint_cuts;
    const std::vector<double> cuts = cuts_read_in(run);
    if (planned.empty()) return Checkpoints::as_planned;
    if (!std::ranges::includes(planned, cuts)) return Checkpoints::elsewhere;
    return std::equal(cuts.begin(), cuts.end(), planned.begin()) ? Checkpoints::as_planned
                                                                 : Checkpoints::left_out;
  }

  // At one checkpoint at least; struck readings were taken, too.
  [[nodiscard]] bool is_read_less_often(const Run& run) const {
    const auto at_checkpoint = [&run](double cuts) {
      return std::ranges::count(run.readings, cuts, &trials::Reading::cuts);
    };
    return std::ranges::any_of(run.readings, [&](const trials::Reading& reading) {
      return at_checkpoint(reading.cuts) < plan_.reading.repeats;
    });
  }

  void on_checkpoints() {
    std::size_t read = 0;
    std::vector<const Run*> elsewhere;
    std::vector<const Run*> left_out;
    std::vector<const Run*> less_often;
    for (std::size_t r = 0; r < done_.runs.size(); ++r) {
      const Run& run = done_.runs[r];
      if (!places_[r] || run.readings.empty()) continue;
      ++read;
      const Checkpoints checkpoints = checkpoints_of(run, *places_[r]);
      if (checkpoints == Checkpoints::elsewhere) elsewhere.push_back(&run);
      if (checkpoints == Checkpoints::left_out) left_out.push_back(&run);
      if (is_read_less_often(run)) less_often.push_back(&run);
    }
    say_of(elsewhere, read, "read at other " + plan_.counted.many + " than planned");
    say_in(
        left_out, read, "nothing was read at a planned checkpoint, and something at a later one");
    say_in(less_often,
           read,
           "fewer readings are recorded at a checkpoint than the " +
               std::to_string(plan_.reading.repeats) + " planned");
  }

  void say_in(const std::vector<const Run*>& runs, std::size_t of, const std::string& what) {
    if (runs.empty()) return;
    say("In " + std::to_string(runs.size()) + " of " + runs_in_words(of) + " " + what + ": " +
        first_of(runs) + ".");
  }

  void say_of(const std::vector<const Run*>& runs, std::size_t of, const std::string& what) {
    if (runs.empty()) return;
    say(std::to_string(runs.size()) + " of " + runs_in_words(of) +
        (runs.size() == 1 ? " was " : " were ") + what + ": " + first_of(runs) + ".");
  }

  void on_order() {
    std::vector<const Run*> elsewhere;
    std::size_t ordered = 0;
    for (std::size_t r = 0; r < done_.runs.size(); ++r) {
      const Run& run = done_.runs[r];
      if (!run.order || !places_[r] || plan_.runs.empty()) continue;
      ++ordered;
      const auto planned = std::ranges::find(plan_.runs, *run.order, &trials::PlannedRun::order);
      if (planned == plan_.runs.end() || planned->arm != *places_[r]) elsewhere.push_back(&run);
    }
    say_of(elsewhere, ordered, "cut at another place in the order than planned");
  }

  static std::string first_of(const std::vector<const Run*>& runs) {
    const std::string first = "run " + runs.front()->name + " of " + runs.front()->arm.blade +
                              " on " + runs.front()->arm.medium.name;
    return runs.size() == 1 ? first : first + " is the first of them";
  }

  const notebook::KeptPlan& kept_;
  const trials::Plan& plan_;
  const trials::Trial& done_;
  const materials::ToldIn& told_;
  std::vector<Arm> planned_;
  std::vector<std::optional<std::size_t>> places_;  // of each run, its arm among the planned ones
  std::vector<std::string> sentences_;
};

// As keenfall judge takes them (--looks); a look at one run each tells no scatter.
bool can_be_allowed_for(const std::vector<int>& looks) {
  constexpr int kFewestRuns = 2;
  constexpr int kMostRuns = 1000;
  constexpr std::size_t kMostLooks = 20;
  return !looks.empty() && looks.front() >= kFewestRuns && looks.back() <= kMostRuns &&
         looks.size() <= kMostLooks &&
         std::ranges::adjacent_find(looks, std::ranges::greater_equal()) == looks.end();
}

std::string listed_runs(const std::vector<int>& looks) {
  std::string text;
  for (const int runs : looks) text += (text.empty() ? "" : ", ") + std::to_string(runs);
  return text.empty() ? "one, at the end" : text;
}

// What the question departs in from what was claimed and planned.
void add_departures_of_question(std::vector<std::string>& sentences,
                                const notebook::KeptPlan& plan,
                                const JudgeOptions& judged_by) {
  if (!plan.claims.empty() && judged_by.worth_it_margin != plan.claims.front().worth_it_margin) {
    sentences.push_back("It is judged by a worth-it margin of " +
                        base::plain_number(judged_by.worth_it_margin) + ", and the claim says " +
                        base::plain_number(plan.claims.front().worth_it_margin) + ".");
  }
  if (judged_by.looks != plan.plan.looks) {
    sentences.push_back("Looks asked for: " + listed_runs(judged_by.looks) +
                        "; planned: " + listed_runs(plan.plan.looks) + ".");
  }
}

}  // namespace

std::vector<std::string> deviations_from(const notebook::KeptPlan& plan,
                                         const trials::Trial& done,
                                         const materials::ToldIn& told) {
  if (!plan.sealed_at_utc) return {};
  return Comparing(plan, done, told).sentences();
}

std::vector<int> looks_to_judge_by(const trials::Plan& plan) {
  return can_be_allowed_for(plan.looks) ? plan.looks : std::vector<int>();
}

JudgeOptions as_planned(JudgeOptions asked, const notebook::KeptPlan& plan) {
  if (!plan.sealed_at_utc) return asked;
  const bool leaves_margin_open =
      !asked.worth_it_is_asked && asked.worth_it_margin == JudgeOptions().worth_it_margin;
  if (leaves_margin_open && !plan.claims.empty()) {
    asked.worth_it_margin = plan.claims.front().worth_it_margin;
  }
  if (asked.looks.empty()) asked.looks = looks_to_judge_by(plan.plan);
  return asked;
}

std::vector<std::string> planned_and_done(const notebook::KeptPlan& plan,
                                          const trials::Trial& done,
                                          const JudgeOptions& judged_by) {
  if (!plan.sealed_at_utc) return {"Its claim and plan are a draft that was never sealed."};
  std::vector<std::string> sentences;
  for (const trials::Claim& claim : plan.claims) {
    sentences.push_back("Claimed: \"" + claim.words + "\"; worth it from " +
                        base::plain_number(claim.worth_it_margin) + " times.");
  }
  sentences.push_back("Claim and plan were sealed at " + *plan.sealed_at_utc + ", SHA-256 " +
                      plan.sha256 + ".");
  std::vector<std::string> departures = deviations_from(plan, done, judged_by.told_in);
  add_departures_of_question(departures, plan, judged_by);
  if (departures.empty()) {
    sentences.emplace_back("As far as it is recorded it was done as planned.");
    return sentences;
  }
  sentences.emplace_back("Done otherwise than planned:");
  std::ranges::move(departures, std::back_inserter(sentences));
  return sentences;
}

std::vector<std::string> facts_of(const notebook::KeptPlan& plan) {
  const std::string text = notebook::plan_text({.claims = plan.claims, .plan = plan.plan});
  std::vector<std::string> facts;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    facts.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return facts;
}

std::optional<base::Problem> problem_of_uncut(const trials::Trial& trial,
                                              const std::string& notebook) {
  if (!trial.runs.empty()) return std::nullopt;
  return base::Problem{
      .kind = base::ProblemKind::unsuitable_data,
      .sentence = "The trial " + trial.name + " has no runs yet: it is planned and was not cut.",
      .place = {.file = notebook},
      .accepted = "its readings first: keenfall take " + base::shell_word(notebook) +
                  " TABLE --trial=" + base::shell_word(trial.name)};
}

}  // namespace keenfall::workbench
