// Nothing acknowledged is lost and nothing half done is kept, whenever the writer is killed: a
// child makes random changes and says so after each; it is killed at a random moment while a reader
// has the notebook open. KEENFALL_KILLS sets how often (20).
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>

#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <iostream>
#include <random>
#include <string>
#include <thread>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::kOpener;
using testing::ScratchFolder;

Authorship authorship(int generation, int change) {
  return {.client_id = "g" + std::to_string(generation) + "c" + std::to_string(change),
          .at_utc = "2026-11-26T12:00:00Z",
          .who = "R."};
}

// One change, whatever comes of it; whether it was written.
bool change_something(Notebook& notebook, std::mt19937& random, const Authorship& by) {
  const auto number = std::to_string(random() % 1000000);
  switch (random() % 4) {
    case 0:
    case 1: {
      trials::Trial trial = a_trial();
      trial.name = "trial " + number;
      const auto taken =
          take(notebook, trial, {{"table.csv", std::string(64 - number.size(), 'a') + number}}, by);
      return taken && taken->entry;  // the same once more writes nothing
    }
    case 2: {
      const auto trials = kept_trials(notebook);
      if (trials.empty()) return false;
      const StrikeRequest request{.trial = trials[random() % trials.size()].name,
                                  .blade = random() % 2 == 0 ? "A" : "B",
                                  .run = "1",
                                  .cuts = 5.0 * static_cast<double>(random() % 4),
                                  .reason = "slipped"};
      return strike(notebook, request, by).has_value();
    }
    default: {
      const auto entries = notebook.journal().size();
      if (entries == 0) return false;
      return notebook.undo(1 + static_cast<std::int64_t>(random() % entries), by).has_value();
    }
  }
}

// In the child: changes until killed, one byte on the pipe for each that was acknowledged.
[[noreturn]] void write_until_killed(const std::string& path, int generation, int pipe_end) {
  auto notebook = Notebook::open_to_write(path, kOpener);
  if (!notebook) _exit(1);
  std::mt19937 random(static_cast<unsigned>(generation));
  for (int change = 0;; ++change) {
    if (!change_something(*notebook, random, authorship(generation, change))) continue;
    const char written = 1;
    if (write(pipe_end, &written, 1) != 1) _exit(2);
  }
}

// How many changes the child said were written before it was killed.
int changes_until_kill(const std::string& path, int generation, std::chrono::milliseconds after) {
  int ends[2];
  EXPECT_EQ(pipe(ends), 0);
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    write_until_killed(path, generation, ends[1]);
  }
  close(ends[1]);
  std::this_thread::sleep_for(after);
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status)) << "the child ended by itself: " << status;
  int acknowledged = 0;
  char byte = 0;
  while (read(ends[0], &byte, 1) == 1) ++acknowledged;
  close(ends[0]);
  return acknowledged;
}

TEST(AKilledWriter, LosesNothingItAcknowledgedAndLeavesNothingHalfDone) {
  const ScratchFolder folder("kill");
  const std::string path = folder.file("bench.keen");
  { ASSERT_TRUE(Notebook::create(path, {.uid = "u", .made_by = "test"}, kOpener)); }
  std::mt19937 random(7);
  std::size_t acknowledged = 0;
  std::size_t before = 0;
  const int kills = testing::times_asked_for("KEENFALL_KILLS", 20);
  for (int generation = 0; generation < kills; ++generation) {
    const auto reader = Notebook::open_to_read(path);
    ASSERT_TRUE(reader);
    (void)kept_trials(*reader);
    const int changes =
        changes_until_kill(path, generation, std::chrono::milliseconds(20 + random() % 200));

    const auto notebook = Notebook::open_to_read(path);
    ASSERT_TRUE(notebook) << notebook.error().sentence;
    const std::vector<std::string> found = check(*notebook);
    ASSERT_TRUE(found.empty()) << generation << ": " << found.front();
    const std::size_t entries = notebook->journal().size();
    // The last change may have been written and not yet said.
    ASSERT_GE(entries, before + static_cast<std::size_t>(changes));
    ASSERT_LE(entries, before + static_cast<std::size_t>(changes) + 1);
    for (const KeptTrial& kept : kept_trials(*notebook)) {
      trials::Trial trial = *kept_trial(*notebook, kept.name);
      for (trials::Run& run : trial.runs) {
        for (trials::Reading& reading : run.readings) reading.struck_reason.reset();
      }
      trials::Trial whole = a_trial();
      whole.name = kept.name;
      for (trials::Run& run : whole.runs) {
        for (trials::Reading& reading : run.readings) reading.struck_reason.reset();
      }
      ASSERT_EQ(trial, whole);
    }
    before = entries;
    acknowledged += static_cast<std::size_t>(changes);
  }
  std::cout << kills << " kills, " << acknowledged << " changes acknowledged, " << before
            << " in the journal\n";
  EXPECT_GT(acknowledged, 0U);  // how many is the disk's affair
}

}  // namespace
}  // namespace keenfall::notebook
