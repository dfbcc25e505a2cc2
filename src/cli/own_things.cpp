#include "cli/own_things.h"

#include "cli/text_layout.h"
#include "telling/listed.h"

#include <utility>

namespace keenfall::cli {

Outcome with_note_of_own(Outcome outcome,
                         const std::vector<std::string>& in_place_of_known,
                         const Look& look) {
  if (in_place_of_known.empty()) return outcome;
  const bool is_one = in_place_of_known.size() == 1;
  const std::string note = "Note: your own " + telling::listed(in_place_of_known) +
                           (is_one ? " is" : " are") + " used in place of the known " +
                           (is_one ? "one" : "ones") + " of that name.";
  outcome.err += shown_as(note, look) + "\n";
  return outcome;
}

}  // namespace keenfall::cli
