// For tests: work in a process of its own, also without rights, and two processes that take turns.
#pragma once

#include "notebook/notebook_failure.h"

#include <gtest/gtest.h>

#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <functional>
#include <string>

namespace keenfall::notebook::testing {

// For two processes that take turns.
class Bell {
 public:
  Bell() { EXPECT_EQ(pipe(ends_.data()), 0); }
  ~Bell() {
    for (const int end : ends_) close(end);
  }
  Bell(const Bell&) = delete;
  Bell& operator=(const Bell&) = delete;
  Bell(Bell&&) = delete;
  Bell& operator=(Bell&&) = delete;

  void ring() const { EXPECT_EQ(write(ends_[1], "!", 1), 1); }
  [[nodiscard]] bool wait() const {
    alarm(60);  // rather than for ever, where the other died
    char said = 0;
    const bool rang = read(ends_[0], &said, 1) == 1;
    alarm(0);
    return rang;
  }

 private:
  std::array<int, 2> ends_{};
};

enum class Rights { same, none };

// What `work` says in a process of its own; without rights it runs as nobody. `meanwhile` is done
// by this process: a thread for it would be forked in the middle of what it does.
inline std::string said_in_a_process(
    Rights rights,
    const std::function<std::string()>& work,
    const std::function<void()>& meanwhile = [] {}) {
  std::array<int, 2> ends{};
  EXPECT_EQ(pipe(ends.data()), 0);
  const pid_t child = fork();
  if (child == 0) {
    constexpr unsigned kNobody = 65534;
    const bool gives_up_rights = rights == Rights::none && geteuid() == 0;
    if (gives_up_rights && (setgid(kNobody) != 0 || setuid(kNobody) != 0)) _exit(1);
    std::string said;
    try {
      said = work();
    } catch (const NotebookFailure& failure) {
      said = failure.what();
    }
    const bool is_said = write(ends[1], said.data(), said.size()) == ssize_t(said.size());
    _exit(is_said ? 0 : 2);
  }
  close(ends[1]);
  meanwhile();
  std::string said;
  std::array<char, 256> buffer{};
  for (ssize_t count = 0; (count = read(ends[0], buffer.data(), buffer.size())) > 0;) {
    said.append(buffer.data(), static_cast<std::size_t>(count));
  }
  close(ends[0]);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_EQ(status, 0);
  return said;
}

inline std::string said_without_rights(const std::function<std::string()>& work) {
  return said_in_a_process(Rights::none, work);
}

}  // namespace keenfall::notebook::testing
