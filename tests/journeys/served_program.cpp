#include "served_program.h"

#include <array>
#include <charconv>
#include <stdexcept>

#include <signal.h>  // NOLINT(modernize-deprecated-headers): kill is POSIX
#include <sys/wait.h>
#include <unistd.h>

namespace keenfall::journeys {

namespace {

[[noreturn]] void become_keenfall_open(const std::vector<std::string>& words,
                                       const std::string& runtime_folder) {
  unsetenv("DISPLAY");
  unsetenv("WAYLAND_DISPLAY");
  unsetenv("XDG_RUNTIME_DIR");
  if (!runtime_folder.empty()) setenv("XDG_RUNTIME_DIR", runtime_folder.c_str(), 1);
  std::vector<std::string> all = {KEENFALL_PROGRAM, "open"};
  all.insert(all.end(), words.begin(), words.end());
  std::vector<char*> arguments;
  for (std::string& word : all) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  execv(KEENFALL_PROGRAM, arguments.data());
  _exit(126);
}

// Up to and with the end of the line; all there is where `to_the_end`.
std::string read_from(int descriptor, bool to_the_end) {
  std::string text;
  char c = 0;
  while (read(descriptor, &c, 1) == 1) {
    text += c;
    if (c == '\n' && !to_the_end) break;
  }
  return text;
}

}  // namespace

ServedProgram::ServedProgram(const std::vector<std::string>& words,
                             const std::string& runtime_folder) {
  std::array<int, 2> ends{};
  if (pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
  child_ = fork();
  if (child_ < 0) throw std::runtime_error("no process");
  if (child_ == 0) {
    dup2(ends[1], STDOUT_FILENO);
    close(ends[0]);
    close(ends[1]);
    become_keenfall_open(words, runtime_folder);
  }
  close(ends[1]);
  out_ = ends[0];
  line_ = read_from(out_, false);
  const std::string before_port = "http://127.0.0.1:";
  const std::string before_key = "#key=";
  const std::size_t port_at = line_.find(before_port);
  const std::size_t key_at = line_.find(before_key);
  if (port_at == std::string::npos || key_at == std::string::npos) return;
  std::from_chars(line_.data() + port_at + before_port.size(), line_.data() + line_.size(), port_);
  key_ = line_.substr(key_at + before_key.size());
  key_.resize(std::min(key_.find(' '), key_.size()));
}

ServedProgram::~ServedProgram() {
  if (child_ > 0) (void)ended_by(SIGKILL);
}

server::testing::RawAnswer ServedProgram::asked(const std::string& begin,
                                                const std::string& body) const {
  const std::string lines =
      "X-Keenfall-Key: " + key_ + "\r\nContent-Length: " + std::to_string(body.size()) + "\r\n";
  return server::testing::answer_to(port_, server::testing::request_of(begin, port_, lines, body));
}

ServedProgram::Ended ServedProgram::ended_by(int signal) {
  kill(child_, signal);
  return ended();
}

ServedProgram::Ended ServedProgram::ended() {
  constexpr int kSignalBase = 128;
  Ended ended;
  int status = 0;
  ended.took = server::testing::time_of([&] {
    ended.out = read_from(out_, true);
    waitpid(child_, &status, 0);
  });
  close(out_);
  child_ = -1;
  ended.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : kSignalBase + WTERMSIG(status);
  return ended;
}

}  // namespace keenfall::journeys
