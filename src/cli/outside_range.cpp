#include "cli/outside_range.h"

namespace keenfall::cli {

std::string outside_words(const wear::Sensitivity& found,
                          const std::string& answer,
                          const std::function<std::string(double)>& shown) {
  if (!found.joint || !found.usual_answer) return {};
  const double usual = *found.usual_answer;
  const bool is_below = usual < found.joint->lo90 && shown(usual) != shown(found.joint->lo90);
  const bool is_above = usual > found.joint->hi90 && shown(usual) != shown(found.joint->hi90);
  if (!is_below && !is_above) return {};
  return " " + answer + " with the usual figures, " + shown(usual) + ", lies " +
         (is_below ? "below" : "above") + " this range.";
}

}  // namespace keenfall::cli
