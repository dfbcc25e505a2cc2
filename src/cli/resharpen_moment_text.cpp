#include "cli/resharpen_moment_text.h"

#include "base/plain_number.h"
#include "telling/rounded.h"

#include <fmt/format.h>

namespace keenfall::cli {

namespace {

std::string from_to(const std::string& lo, const std::string& hi) {
  return lo == hi ? lo : lo + " to " + hi;
}

std::string cost_words(const sharpening::MomentOverDraws& moment) {
  const std::string lo = base::with_figures(moment.minutes_per_1000_cuts.lo90, 2);
  const std::string hi = base::with_figures(moment.minutes_per_1000_cuts.hi90, 2);
  return from_to(lo, hi) + " min per 1000 cuts";
}

std::string as_far_as(const sharpening::MomentOverDraws& moment) {
  return "later is cheaper as far as " + base::with_figures(moment.looked_to_cuts, 2) +
         " cuts were looked at";
}

// In some draws the moment lies at an end of what was looked at.
std::string ends_words(const sharpening::MomentOverDraws& moment) {
  std::string words;
  const auto say = [&words](double fraction, const std::string& what) {
    if (fraction > 0) {
      words += fmt::format(" In {} of the draws {}.", telling::chance_text(fraction), what);
    }
  };
  say(moment.fraction_at_last, as_far_as(moment));
  say(moment.fraction_at_first, "the sooner is the cheaper");
  return words;
}

// The best is the end of what was looked at: no moment was found, only that it is not before.
std::string at_the_end_words(const sharpening::MomentOverDraws& moment, const std::string& way) {
  std::string words = fmt::format("{}: {} ({}); so how keen the edge must be decides.",
                                  way,
                                  as_far_as(moment),
                                  cost_words(moment));
  if (moment.fraction_at_last == 1) return words;
  words += fmt::format(" In {} of the draws it is cheaper sooner",
                       telling::chance_text(1 - moment.fraction_at_last));
  const std::string soonest = base::with_figures(moment.cuts.lo90, 2);
  const bool is_sooner = soonest != base::with_figures(moment.looked_to_cuts, 2);
  return words + (is_sooner ? ", down to every " + soonest + " cuts." : ".");
}

}  // namespace

std::string moment_sentence(const sharpening::MomentOverDraws& moment, const std::string& way) {
  if (moment.fraction_at_first == 1) {
    return fmt::format("{}: the sooner the cheaper, with nothing to set up.", way);
  }
  const bool is_at_end = moment.typical.where == sharpening::Where::at_last ||
                         moment.cuts.lo90 >= moment.looked_to_cuts;
  if (is_at_end) return at_the_end_words(moment, way);
  return fmt::format(
      "{} every {} cuts costs least (typically every {}): {}.{}",
      way,
      from_to(base::with_figures(moment.cuts.lo90, 2), base::with_figures(moment.cuts.hi90, 2)),
      base::with_figures(moment.typical.cuts, 2),
      cost_words(moment),
      ends_words(moment));
}

}  // namespace keenfall::cli
