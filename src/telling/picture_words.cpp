#include "telling/picture_words.h"

#include "base/plain_number.h"
#include "telling/rounded.h"

#include <fmt/format.h>

namespace keenfall::telling {

std::string interval_text(const numerics::Interval& interval,
                          const std::function<std::string(double)>& rounded) {
  return fmt::format(
      "{} ({} to {})", rounded(interval.median), rounded(interval.lo95), rounded(interval.hi95));
}

std::string place_text(double cuts) {
  constexpr int kFigures = 3;
  return base::plain_number(std::stod(base::with_figures(cuts, kFigures)));
}

std::string curve_point_words(const verdicts::Judgement& judgement,
                              const verdicts::CurvePoint& point) {
  return fmt::format("{} {} ({} to {}{})",
                     reading_text(point.reading.median),
                     judgement.unit,
                     reading_text(point.reading.lo95),
                     reading_text(point.reading.hi95),
                     point.beyond_what_was_cut ? ", beyond what was cut" : "");
}

std::string start_words(const verdicts::Judgement& judgement, const verdicts::ArmResult& arm) {
  if (!arm.start_reading) return {};
  return reading_text(arm.start_reading->median) + " " + judgement.unit;
}

std::string starts_words(const verdicts::Judgement& judgement) {
  return fmt::format(
      "{} at 0 {}, {}", judgement.kind.words, judgement.counted.many, judgement.unit);
}

std::string effect_name(const verdicts::FactorEffects& found,
                        const verdicts::FactorEffect& effect) {
  const verdicts::Factor& factor = found.factors[effect.factor];
  return fmt::format(
      "{}: {} against {}", factor.what, factor.levels[effect.level], factor.levels.front());
}

std::optional<double> reading_compared(const verdicts::Judgement& judgement,
                                       const verdicts::ArmResult& arm,
                                       const verdicts::At& at) {
  if (!arm.start_reading) return std::nullopt;
  if (at.what == verdicts::ComparedAt::common_reading) return at.reading;
  double level = at.level;
  if (at.what == verdicts::ComparedAt::test) {
    if (!judgement.test || !judgement.test->level) return std::nullopt;
    level = *judgement.test->level;
  }
  const double start = arm.start_reading->median;
  const bool rises = judgement.kind.keener_when == trials::KeenerWhen::lower;
  return rises ? start * level : start / level;
}

}  // namespace keenfall::telling
