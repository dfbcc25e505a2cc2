// Taps that cannot be written: the answer says so, nothing counts as kept, and the same taps count
// once when they are sent again.
#include "server/asked_bench_test.h"

#include <csignal>
#include <string>

#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

namespace keenfall::server {
namespace {

using testing::json;
using testing::kRun;

// No file grows beyond what is given while this lives: a full disk to whoever writes.
class FullDisk {
 public:
  explicit FullDisk(rlim_t bytes) : ignored_(std::signal(SIGXFSZ, SIG_IGN)) {
    getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit few{.rlim_cur = bytes, .rlim_max = before_.rlim_max};
    EXPECT_EQ(setrlimit(RLIMIT_FSIZE, &few), 0);
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;
  FullDisk(FullDisk&&) = delete;
  FullDisk& operator=(FullDisk&&) = delete;
  ~FullDisk() {
    setrlimit(RLIMIT_FSIZE, &before_);
    (void)std::signal(SIGXFSZ, ignored_);
  }

 private:
  rlimit before_{};
  void (*ignored_)(int);
};

class ABenchThatCannotWrite : public testing::AskedBench {
 protected:
  void SetUp() override {
    with_sealed_trial();
    path_ = open_.told().notebook->path;
    (void)begun();
  }

  // What is sent again is the same to the letter.
  static json taps() {
    return {{"entries",
             {{{"id", "e1"}, {"at_ms", 1764000000001}, {"what", "noted"}, {"words", "wet rope"}},
              {{"id", "e2"}, {"at_ms", 1764000000002}, {"what", "cuts"}, {"cuts", 1}}}}};
  }
  json sent_in_vain(int status) { return refused(status, "POST", "/bench/" + kRun, taps()); }

  void expect_none_kept_and_all_taken_later() {
    const json before = got("GET", "/bench/" + kRun, "BenchRun");
    EXPECT_EQ(before["entries"], 0);
    EXPECT_EQ(before["standing"]["cuts"], 0);

    const json after = got("POST", "/bench/" + kRun, "BenchRun", taps());
    EXPECT_EQ(after["entries"], 2);
    EXPECT_EQ(after["standing"]["cuts"], 1);
  }

  std::string path_;
};

TEST_F(ABenchThatCannotWrite, KeepsNoTapOnAFullDisk) {
  {
    const FullDisk full(1024);
    const json problem = sent_in_vain(503);
    EXPECT_EQ(problem["kind"], "failed");
    EXPECT_NE(std::string(problem["sentence"]).find("nothing of this change was kept"),
              std::string::npos)
        << problem;
  }
  expect_none_kept_and_all_taken_later();
}

TEST_F(ABenchThatCannotWrite, KeepsNoTapWhileAnotherWrites) {
  {
    const auto held =
        workbench::opened_to_write(path_, {.who = "M.", .machine_words = "bench-3"}).value();
    const json problem = sent_in_vain(503);
    EXPECT_EQ(problem["kind"], "failed");
    EXPECT_NE(std::string(problem["sentence"]).find("Nothing was changed; try again."),
              std::string::npos)
        << problem;
  }
  expect_none_kept_and_all_taken_later();
}

TEST_F(ABenchThatCannotWrite, KeepsNoTapInANotebookThatMayNotBeWrittenTo) {
  if (geteuid() == 0) GTEST_SKIP() << "whoever may do all may write to it";
  ASSERT_EQ(chmod(path_.c_str(), 0444), 0);
  const json problem = sent_in_vain(409);
  EXPECT_EQ(problem["kind"], "unreadable");
  EXPECT_EQ(problem["sentence"], "The notebook may not be written to.");
  ASSERT_EQ(chmod(path_.c_str(), 0644), 0);
  expect_none_kept_and_all_taken_later();
}

}  // namespace
}  // namespace keenfall::server
