#include "cli/interruption.h"

#include <atomic>

#include <signal.h>  // NOLINT(modernize-deprecated-headers): sigaction is POSIX

namespace keenfall::cli {

namespace {

// A signal handler can reach nothing but a global.
std::atomic<bool> interrupted{false};
static_assert(std::atomic<bool>::is_always_lock_free, "a handler may only touch lock-free atomics");

void note_interruption(int /*signal*/) { interrupted = true; }

}  // namespace

void listen_for_interruption() {
  struct sigaction action {};
  action.sa_handler = note_interruption;
  sigemptyset(&action.sa_mask);
  action.sa_flags = SA_RESTART | static_cast<int>(SA_RESETHAND);
  sigaction(SIGINT, &action, nullptr);
}

bool is_interrupted() { return interrupted; }

}  // namespace keenfall::cli
