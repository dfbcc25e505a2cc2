#include "tests/agreement/plain_fit.h"

#include "blunting/inference/model_spec.h"
#include "tests/agreement/answers.h"
#include "verdicts/lasting.h"

#include <algorithm>
#include <stdexcept>

namespace keenfall::agreement {

namespace {

// The arm whose number, counted from 1, follows the mark.
std::size_t arm_after(const PlainFit& plain, const std::string& name, char mark) {
  const auto number = static_cast<std::size_t>(std::stoul(name.substr(name.find(mark) + 1)));
  return arms_as_in_table(plain.data).at(number - 1);
}

blunting::Draws log_ratio(const PlainFit& plain, const std::string& name, double level) {
  const verdicts::At at{.what = verdicts::ComparedAt::level, .level = level};
  const auto claim = verdicts::ClaimAbout::these_blades;
  const auto cuts = [&](char mark) {
    return verdicts::log_cuts_until(plain.data, plain.fit, arm_after(plain, name, mark), at, claim);
  };
  blunting::Draws ratio = cuts('[');
  const blunting::Draws below = cuts(':');
  for (std::size_t d = 0; d < below.size(); ++d) ratio[d] -= below[d];
  return ratio;
}

}  // namespace

std::vector<std::size_t> arms_as_in_table(const blunting::BluntingData& data) {
  std::vector<blunting::RunData> runs = data.runs;
  std::ranges::sort(runs, {}, &blunting::RunData::run);
  std::vector<std::size_t> arms;
  for (const blunting::RunData& run : runs) {
    if (std::ranges::find(arms, run.arm) == arms.end()) arms.push_back(run.arm);
  }
  return arms;
}

PlainFit plain_fit_of(const std::string& trial) {
  const trials::Trial taken = trial_named(trial);
  const auto spec = blunting::plain_model();
  auto data = blunting::prepare(taken, blunting::fits_of(taken).at(0), spec.errors);
  if (!data) throw std::runtime_error(base::in_words(data.error()));
  auto fit = blunting::fit_blunting(
      *data, spec, {.draws = 4000}, {4711}, base::threads(2), base::unwatched());
  if (!fit) throw std::runtime_error(base::in_words(fit.error()));
  return {std::move(*data), std::move(*fit)};
}

blunting::Draws draws_named(const PlainFit& plain, const std::string& name) {
  if (name == "s_b0") return plain.fit.start_scatter[0];
  if (name == "s_tau") return plain.fit.run_scatter[0];
  if (name == "sigma") return plain.fit.reading_scatter;
  if (name.starts_with("half_keenness")) return log_ratio(plain, name, 2);
  if (name.starts_with("cuts_to_3")) return log_ratio(plain, name, 3);
  const blunting::ArmDraws& arm = plain.fit.arms.at(arm_after(plain, name, '['));
  if (name.starts_with("beta0")) return arm.log_start;
  if (name.starts_with("mu")) return arm.log_half_keenness;
  if (name.starts_with("p[")) return arm.shape;
  throw std::runtime_error("no draws are called " + name);
}

}  // namespace keenfall::agreement
