// Ctrl-C as a wish to stop: the first one asks the work to end cleanly, a second one ends the
// program.
#pragma once

namespace keenfall::cli {

void listen_for_interruption();
[[nodiscard]] bool is_interrupted();

}  // namespace keenfall::cli
