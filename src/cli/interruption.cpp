#include "cli/interruption.h"

#include <array>
#include <atomic>
#include <csignal>
#include <ctime>

#include <fcntl.h>
#include <poll.h>
#include <signal.h>  // NOLINT(modernize-deprecated-headers): sigaction is POSIX
#include <unistd.h>

namespace keenfall::cli {

namespace {

// A signal handler can reach nothing but a global.
std::atomic<bool> interrupted{false};
static_assert(std::atomic<bool>::is_always_lock_free, "a handler may only touch lock-free atomics");

// Where somebody waits for it: the end of a pipe to write to.
std::atomic<int> bell{-1};
static_assert(std::atomic<int>::is_always_lock_free, "a handler may only touch lock-free atomics");

void ring() {
  const int end = bell;
  if (end >= 0) [[maybe_unused]]
    const auto written = write(end, "", 1);
}

void note_interruption(int /*signal*/) {
  interrupted = true;
  ring();
}

// When a system first asked for the end, by a clock that never goes back; 0: it did not yet.
std::atomic<long> asked_to_end_s{0};
static_assert(std::atomic<long>::is_always_lock_free, "a handler may only touch lock-free atomics");

// Those who end programs ask more than once. It takes some time to end, but not for ever.
void note_termination(int signal) {
  constexpr long kPatienceS = 10;
  timespec now{};
  clock_gettime(CLOCK_MONOTONIC, &now);
  long first = 0;
  if (asked_to_end_s.compare_exchange_strong(first, now.tv_sec + 1))
    return note_interruption(signal);
  if (now.tv_sec + 1 - first < kPatienceS) return;
  (void)std::signal(signal, SIG_DFL);
  (void)raise(signal);  // as soon as this has returned
}

void listen_for(int signal, void (*note)(int), int flags) {
  struct sigaction action {};
  action.sa_handler = note;
  sigemptyset(&action.sa_mask);
  action.sa_flags = SA_RESTART | flags;
  sigaction(signal, &action, nullptr);
}

}  // namespace

void listen_for_interruption() {
  listen_for(SIGINT, note_interruption, static_cast<int>(SA_RESETHAND));
}

void listen_for_termination() {
  listen_for(SIGTERM, note_termination, 0);
  listen_for(SIGHUP, note_termination, 0);
}

void interrupt() {
  if (!interrupted.exchange(true)) ring();
}

bool is_interrupted() { return interrupted; }

bool is_interrupted_before_readable(int descriptor) {
  constexpr int kMilliseconds = 1000;  // should a pipe not be had
  std::array<int, 2> ends = {-1, -1};
  const bool has_bell = pipe2(ends.data(), O_CLOEXEC) == 0;
  if (has_bell) bell = ends[1];
  bool is_readable = false;
  while (!interrupted && !is_readable) {
    std::array<pollfd, 2> waiting = {{{ends[0], POLLIN, 0}, {descriptor, POLLIN, 0}}};
    if (poll(waiting.data(), waiting.size(), has_bell ? -1 : kMilliseconds) < 0) continue;
    is_readable = waiting[1].revents != 0;
  }
  if (has_bell) {
    bell = -1;
    close(ends[0]);
    close(ends[1]);
  }
  return interrupted;
}

void wait_until_interrupted() {
  constexpr int kNothingToRead = -1;
  (void)is_interrupted_before_readable(kNothingToRead);
}

}  // namespace keenfall::cli
