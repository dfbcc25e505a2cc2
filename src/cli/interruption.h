// Ctrl-C as a wish to stop: the first one asks the work to end cleanly, a second one ends the
// program.
#pragma once

namespace keenfall::cli {

void listen_for_interruption();
// The same wish from a system that shuts down, from `kill`, or from a terminal window that is
// closed: for what goes on until it is stopped. Asked again it goes on ending; after ten seconds it
// is ended.
void listen_for_termination();
// The same wish from within, from any thread; further ones do nothing.
void interrupt();
[[nodiscard]] bool is_interrupted();
// Returns once it is.
void wait_until_interrupted();
// Returns once it is, or once something can be read there (or never will be): whether it is.
[[nodiscard]] bool is_interrupted_before_readable(int descriptor);

}  // namespace keenfall::cli
