// The app as it is served, while another process writes to its notebook: what reads is answered at
// once, and what would write is told so in time.
#include "notebook/notebook.h"
#include "server/served_app_test.h"

#include <algorithm>
#include <array>
#include <string>
#include <thread>
#include <vector>

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

namespace keenfall::server {
namespace {

using testing::RawAnswer;
using testing::time_of;
using namespace std::chrono_literals;

// A process of its own that holds the lock under which SQLite writes to a notebook's log
// (https://sqlite.org/walformat.html, section 2.3), as any program does that writes to it.
class AnotherProgram {
 public:
  explicit AnotherProgram(const std::string& notebook) {
    const std::string shared = notebook + "-shm";
    std::array<int, 2> said{};
    std::array<int, 2> heard{};
    EXPECT_EQ(pipe(said.data()) + pipe(heard.data()), 0);
    process_ = fork();
    if (process_ == 0) {
      constexpr off_t kWriteLock = 120;
      const int file = open(shared.c_str(), O_RDWR);
      struct flock lock {};
      lock.l_type = F_WRLCK;
      lock.l_whence = SEEK_SET;
      lock.l_start = kWriteLock;
      lock.l_len = 1;
      const char is_held = fcntl(file, F_SETLK, &lock) == 0 ? 'y' : 'n';
      close(heard[1]);
      (void)!write(said[1], &is_held, 1);
      char end = 0;
      (void)!read(heard[0], &end, 1);
      _exit(0);
    }
    close(heard[0]);
    close(said[1]);
    (void)!read(said[0], &is_held_, 1);
    close(said[0]);
    keeps_on_ = heard[1];
  }
  AnotherProgram(const AnotherProgram&) = delete;
  AnotherProgram& operator=(const AnotherProgram&) = delete;
  AnotherProgram(AnotherProgram&&) = delete;
  AnotherProgram& operator=(AnotherProgram&&) = delete;
  ~AnotherProgram() {
    close(keeps_on_);
    waitpid(process_, nullptr, 0);
  }

  [[nodiscard]] bool holds_the_lock() const { return is_held_ == 'y'; }

 private:
  pid_t process_ = -1;
  int keeps_on_ = -1;
  char is_held_ = 'n';
};

class WaitingWriters : public testing::ServedApp {
 protected:
  WaitingWriters() : ServedApp(kPatience) {}

  std::chrono::milliseconds slowest_reading() {
    return slowest_of({"GET /", "GET /api/v1/home", "GET /api/v1/kit"});
  }

  // More than there are threads, of which all wait while the notebook is read.
  void refuse_writers_and_answer_readers(const std::string& why) {
    constexpr std::size_t kWriters = 20;
    const auto alone = slowest_reading();
    std::vector<RawAnswer> answers(kWriters);
    std::vector<std::chrono::milliseconds> took(kWriters);
    std::vector<std::thread> writers;
    for (std::size_t i = 0; i < kWriters; ++i) {
      writers.emplace_back([&, i] {
        took[i] = time_of([&] {
          answers[i] =
              asked("POST /api/v1/kit/blades", R"({"name": "Z)" + std::to_string(i) + R"("})");
        });
      });
    }
    std::this_thread::sleep_for(300ms);
    // A build that watches itself is slow when alone, too.
    EXPECT_LT(slowest_reading(), std::max(200ms, 3 * alone));
    for (std::thread& writer : writers) writer.join();

    for (const RawAnswer& answer : answers) {
      EXPECT_EQ(answer.status, 503);
      const std::string said = nlohmann::json::parse(answer.body)["problems"][0]["sentence"];
      EXPECT_NE(said.find(why), std::string::npos) << said;
    }
    EXPECT_LT(*std::ranges::max_element(took), kPatience + 1s + 10 * alone);
  }

  std::size_t blades_called_z() {
    const auto kit = nlohmann::json::parse(asked("GET /api/v1/kit").body);
    return static_cast<std::size_t>(std::ranges::count_if(kit["blades"], [](const auto& blade) {
      return std::string(blade["name"]).starts_with("Z");
    }));
  }

  static constexpr std::chrono::milliseconds kPatience{1500};
};

TEST_F(WaitingWriters, LetOthersReadWhileACommandWrites) {
  const std::size_t before = blades_called_z();
  {
    const auto held =
        workbench::opened_to_write(path_, {.who = "M.", .machine_words = "bench-3"}).value();
    refuse_writers_and_answer_readers(
        "The notebook is being written to by M. on bench-3, since , and one writes at a time. "
        "Nothing was changed; try again.");
  }
  EXPECT_EQ(blades_called_z(), before);
  EXPECT_EQ(asked("POST /api/v1/kit/blades", R"({"name": "Z"})").status, 201);
  EXPECT_EQ(blades_called_z(), before + 1);
}

TEST_F(WaitingWriters, LetOthersReadWhileAnotherProgramWrites) {
  const std::size_t before = blades_called_z();
  const auto reader = notebook::Notebook::open_to_read(path_).value();  // keeps the log there
  {
    const AnotherProgram another(path_);
    ASSERT_TRUE(another.holds_the_lock());
    refuse_writers_and_answer_readers("othing was changed");
  }
  EXPECT_EQ(blades_called_z(), before);
  EXPECT_EQ(asked("POST /api/v1/kit/blades", R"({"name": "Z"})").status, 201);
}

}  // namespace
}  // namespace keenfall::server
