#include "cli/resharpen_moment_text.h"

#include "base/plain_number.h"

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

// In some draws the moment lies at an end of what was looked at.
std::string ends_words(const sharpening::MomentOverDraws& moment) {
  std::string words;
  const auto say = [&words](double fraction, const std::string& what) {
    if (fraction > 0) words += fmt::format(" In {:.0f} % of the draws {}.", 100 * fraction, what);
  };
  say(moment.fraction_at_last, "the later is the cheaper, as far as was looked");
  say(moment.fraction_at_first, "the sooner is the cheaper");
  return words;
}

}  // namespace

std::string moment_sentence(const sharpening::MomentOverDraws& moment, const std::string& way) {
  const std::string last = base::with_figures(moment.cuts.hi90, 2);
  if (moment.fraction_at_last == 1) {
    return fmt::format(
        "{}: the later the cheaper, as far as {} cuts ({}); so how keen the edge must be decides.",
        way,
        last,
        cost_words(moment));
  }
  if (moment.fraction_at_first == 1) {
    return fmt::format("{}: the sooner the cheaper, with nothing to set up.", way);
  }
  const bool is_typically_last = moment.typical.where == sharpening::Where::at_last;
  return fmt::format("{} every {} cuts costs least (typically {}): {}.{}",
                     way,
                     from_to(base::with_figures(moment.cuts.lo90, 2), last),
                     is_typically_last ? std::string("as late as was looked")
                                       : "every " + base::with_figures(moment.typical.cuts, 2),
                     cost_words(moment),
                     ends_words(moment));
}

}  // namespace keenfall::cli
