#include "cli/ending.h"

#include "cli/interruption.h"

#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <future>
#include <thread>

#include <signal.h>  // NOLINT(modernize-deprecated-headers): kill is POSIX
#include <sys/wait.h>
#include <unistd.h>

namespace keenfall::cli {
namespace {

using namespace std::chrono_literals;

TEST(Ending, WaitsForWhatIsSoonDone) {
  bool is_late = false;

  done_within(
      1min, [] {}, [&] { is_late = true; });

  EXPECT_FALSE(is_late);
}

TEST(Ending, SaysWhatTakesTooLongWhileItIsStillBeingDone) {
  std::promise<void> late;

  done_within(
      10ms, [&] { late.get_future().wait(); }, [&] { late.set_value(); });
}

// A process that listens, and goes on for a moment after it was asked to end; how it ended.
int status_after_two(int signal) {
  constexpr int kAsItWanted = 7;
  std::array<int, 2> told{};
  EXPECT_EQ(pipe(told.data()), 0);
  const pid_t child = fork();
  if (child == 0) {
    listen_for_termination();
    (void)write(told[1], "1", 1);
    wait_until_interrupted();
    (void)write(told[1], "2", 1);
    std::this_thread::sleep_for(300ms);
    _exit(kAsItWanted);
  }
  char said = 0;
  for (int time = 0; time < 2; ++time) {
    EXPECT_EQ(read(told[0], &said, 1), 1);
    kill(child, signal);
  }
  int status = 0;
  waitpid(child, &status, 0);
  close(told[0]);
  close(told[1]);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

TEST(Ending, IsNotCutShortByTheSameWishAgain) {
  EXPECT_EQ(status_after_two(SIGTERM), 7);
  EXPECT_EQ(status_after_two(SIGHUP), 7);
}

}  // namespace
}  // namespace keenfall::cli
