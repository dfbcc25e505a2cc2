#include "cli/hand.h"

#include <string>

namespace keenfall::cli {

workbench::Hand hand_of(const TypedOptions& typed, const Surroundings& around) {
  const std::string who = typed.who.value_or("");
  return {.who = who.empty() ? around.login_name : who,
          .machine_words = around.machine_words,
          .at_utc = around.utc_now(),
          .why = typed.why.value_or("")};
}

}  // namespace keenfall::cli
