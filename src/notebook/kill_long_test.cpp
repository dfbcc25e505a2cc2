// Nothing acknowledged is lost and nothing half done is kept or seen, whenever the writer is
// killed: a process makes random changes and says so after each; it is killed at a random moment,
// often just after its first change, while another reads and checks all the time. What is there
// afterwards is held against the same changes made in peace. KEENFALL_KILLS sets how often (20).
#include "notebook/check.h"
#include "notebook/failing_disk.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"
#include "notebook/plans.h"
#include "notebook/random_changes.h"

#include <gtest/gtest.h>

#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <exception>
#include <filesystem>
#include <functional>
#include <iostream>
#include <random>
#include <string>
#include <thread>

namespace keenfall::notebook {
namespace {

using testing::change_something;
using testing::kOpener;
using testing::NotebookState;
using testing::ScratchFolder;
using testing::state_of;

constexpr int kKillsOfANotebook = 20;  // then a new one, so that looking at all of it stays quick

// The changes of one writer, in their order; what they are follows from its number and from the
// notebook before.
class Changes {
 public:
  explicit Changes(int writer) : writer_(writer), random_(static_cast<unsigned>(writer)) {}

  void make_next(Notebook& notebook) {
    while (!change_something(
        notebook,
        random_,
        testing::authorship("w" + std::to_string(writer_) + "c" + std::to_string(++tried_)))) {
    }
  }

 private:
  int writer_;
  int tried_ = 0;
  std::mt19937 random_;
};

class Pipe {
 public:
  Pipe() { EXPECT_EQ(pipe(ends_.data()), 0); }
  ~Pipe() {
    close_reading();
    close_writing();
  }
  Pipe(const Pipe&) = delete;
  Pipe& operator=(const Pipe&) = delete;
  Pipe(Pipe&&) = delete;
  Pipe& operator=(Pipe&&) = delete;

  void close_reading() { close_end(0); }
  void close_writing() { close_end(1); }
  // False where the other end is gone.
  bool write_one() {
    const char byte = 1;
    return write(ends_[1], &byte, 1) == 1;
  }
  bool read_one() {
    char byte = 0;
    return read(ends_[0], &byte, 1) == 1;
  }
  [[nodiscard]] bool is_closed_by_writer() const {
    pollfd end{.fd = ends_[0], .events = POLLIN, .revents = 0};
    return poll(&end, 1, 0) != 0;
  }

 private:
  void close_end(std::size_t end) {
    if (ends_.at(end) >= 0) close(ends_.at(end));
    ends_.at(end) = -1;
  }

  std::array<int, 2> ends_{-1, -1};
};

// One byte for each change that was acknowledged.
[[noreturn]] void write_until_killed(const std::string& path, int writer, Pipe& said) {
  said.close_reading();
  auto notebook = Notebook::open_to_write(path, kOpener);
  if (!notebook) _exit(1);
  Changes changes(writer);
  for (;;) {
    changes.make_next(*notebook);
    if (!said.write_one()) _exit(2);
  }
}

// What is wrong with what a reader sees; empty: nothing. Both runs of a trial grow in one change.
std::string wrong_to_a_reader(const std::string& path) {
  const auto notebook = Notebook::open_to_read(path);
  if (!notebook) return notebook.error().sentence;
  const auto findings = check(*notebook);
  if (!findings.empty()) return findings.front();
  const OneMoment moment(*notebook);
  for (const KeptTrial& kept : kept_trials(*notebook)) {
    const auto trial = kept_trial(*notebook, kept.name);
    if (!trial) return kept.name + " is listed and not there";
    if (trial->runs.empty() && kept_plan(*notebook, kept.name)) continue;  // planned only
    if (trial->runs.size() < 2 ||
        trial->runs[0].readings.size() != trial->runs[1].readings.size()) {
      return kept.name + " is there in half";
    }
  }
  return {};
}

// Ends with 0 once the pipe is closed, with 3 as soon as something is wrong.
[[noreturn]] void read_until_told(const std::string& path, Pipe& told) {
  told.close_writing();
  std::string wrong;
  while (wrong.empty() && !told.is_closed_by_writer()) {
    try {
      wrong = wrong_to_a_reader(path);
    } catch (const std::exception& failure) {
      wrong = failure.what();
    }
  }
  if (!wrong.empty()) std::cerr << "the reader: " << wrong << "\n";
  _exit(wrong.empty() ? 0 : 3);
}

pid_t in_a_process(const std::function<void()>& work) {
  const pid_t child = fork();
  if (child == 0) work();
  return child;
}

// How many changes the writer said were made before it was killed.
int changes_until_kill(const std::string& path, int writer, std::mt19937& random) {
  Pipe told;
  const pid_t reader = in_a_process([&] { read_until_told(path, told); });
  told.close_reading();
  Pipe said;
  const pid_t child = in_a_process([&] {
    told.close_writing();  // else the reader would wait for this one to end
    write_until_killed(path, writer, said);
  });
  said.close_writing();
  const bool waits_for_first = random() % 2 == 0;
  int acknowledged = waits_for_first && said.read_one() ? 1 : 0;
  std::this_thread::sleep_for(std::chrono::milliseconds(random() % (waits_for_first ? 60 : 200)));
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status)) << "the writer ended by itself: " << status;
  while (said.read_one()) ++acknowledged;
  told.close_writing();
  waitpid(reader, &status, 0);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << "the reader saw something wrong";
  return acknowledged;
}

// Makes the same changes in the notebook beside, which nobody kills, and is left at the one of the
// two states that may be there.
NotebookState told_after(const std::string& twin,
                         int writer,
                         int acknowledged,
                         const NotebookState& found) {
  const testing::FailingDisk never_failing;  // nor waiting for a sync
  auto notebook = Notebook::open_to_write(twin, kOpener);
  EXPECT_TRUE(notebook);
  Changes changes(writer);
  for (int i = 0; i < acknowledged; ++i) changes.make_next(*notebook);
  NotebookState told = state_of(*notebook);
  if (told == found) return told;
  changes.make_next(*notebook);  // it may have been made and not yet said
  return state_of(*notebook);
}

TEST(AKilledWriter, LosesNothingItAcknowledgedAndLeavesNothingHalfDone) {
  const ScratchFolder folder("kill");
  const std::string path = folder.file("bench.keen");
  const std::string twin = folder.file("twin.keen");
  std::mt19937 random(7);
  int acknowledged = 0;
  const int kills = testing::times_asked_for("KEENFALL_KILLS", 20);
  for (int writer = 0; writer < kills; ++writer) {
    if (writer % kKillsOfANotebook == 0) {
      for (const std::string& made : {path, twin}) {
        for (const char* ending : {"", "-wal", "-shm"}) std::filesystem::remove(made + ending);
        ASSERT_TRUE(Notebook::create(made, {.uid = "u", .made_by = "test"}, kOpener));
      }
    }
    const int changes = changes_until_kill(path, writer, random);
    acknowledged += changes;

    const auto notebook = Notebook::open_to_read(path);
    ASSERT_TRUE(notebook) << notebook.error().sentence;
    ASSERT_EQ(check(*notebook), std::vector<std::string>{}) << "writer " << writer;
    const NotebookState found = state_of(*notebook);
    const NotebookState told = told_after(twin, writer, changes, found);
    ASSERT_TRUE(found == told) << "writer " << writer << ": " << found.journal.size()
                               << " entries, told " << told.journal.size();
  }
  std::cout << kills << " kills, " << acknowledged << " changes acknowledged\n";
  EXPECT_GT(acknowledged, 0);  // how many is the disk's affair
}

}  // namespace
}  // namespace keenfall::notebook
