#include "child_process.h"

#include <array>
#include <cstdlib>
#include <stdexcept>

#include <poll.h>
#include <pty.h>
#include <signal.h>  // NOLINT(modernize-deprecated-headers): kill is POSIX
#include <sys/wait.h>
#include <unistd.h>

namespace keenfall::journeys {

namespace {

void become(const CommandLine& command) {
  for (const auto& [name, content] : command.environment) {
    if (content.empty()) {
      unsetenv(name.c_str());
    } else {
      setenv(name.c_str(), content.c_str(), 1);
    }
  }
  std::vector<std::string> words = command.words;
  words.insert(words.begin(), command.program);
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  execv(command.program.c_str(), arguments.data());
  _exit(126);
}

struct Stream {
  int descriptor = -1;
  std::string text;
  bool is_open = true;
};

void read_some(Stream& stream) {
  std::array<char, 4096> buffer{};
  const ssize_t count = read(stream.descriptor, buffer.data(), buffer.size());
  if (count > 0) {
    stream.text.append(buffer.data(), static_cast<std::size_t>(count));
  } else {
    stream.is_open = false;
  }
}

// Reads both streams to their ends; `watched` may hold the word that brings the Ctrl-C.
void listen_to(pid_t child, Stream& out, Stream& err, const std::string& interrupt_at) {
  bool is_interrupted = interrupt_at.empty();
  while (out.is_open || err.is_open) {
    std::array<pollfd, 2> waiting = {{{out.is_open ? out.descriptor : -1, POLLIN, 0},
                                      {err.is_open ? err.descriptor : -1, POLLIN, 0}}};
    if (poll(waiting.data(), waiting.size(), -1) < 0) continue;
    if (waiting[0].revents != 0) read_some(out);
    if (waiting[1].revents != 0) read_some(err);
    const bool has_said_it = (out.text + err.text).find(interrupt_at) != std::string::npos;
    if (!is_interrupted && has_said_it) {
      kill(child, SIGINT);
      is_interrupted = true;
    }
  }
}

int exit_code_of(pid_t child) {
  int status = 0;
  if (waitpid(child, &status, 0) != child) throw std::runtime_error("the child was lost");
  constexpr int kSignalBase = 128;
  return WIFEXITED(status) ? WEXITSTATUS(status) : kSignalBase + WTERMSIG(status);
}

constexpr winsize kTerminalSize = {.ws_row = 40, .ws_col = 100};

Said run_on_a_terminal(const CommandLine& command) {
  Stream terminal;
  const pid_t child = forkpty(&terminal.descriptor, nullptr, nullptr, &kTerminalSize);
  if (child < 0) throw std::runtime_error("no terminal to run on");
  if (child == 0) become(command);
  Stream none{.is_open = false};
  listen_to(child, terminal, none, command.interrupt_at);
  close(terminal.descriptor);
  const int code = exit_code_of(child);
  return {.exit_code = code, .out = terminal.text};
}

// Two ends of a pipe, or of a terminal.
struct Line {
  int ours = -1;
  int theirs = -1;
};

Line a_pipe() {
  std::array<int, 2> ends{};
  if (pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
  return {.ours = ends[0], .theirs = ends[1]};
}

Line a_terminal() {
  Line line;
  if (openpty(&line.ours, &line.theirs, nullptr, nullptr, &kTerminalSize) != 0) {
    throw std::runtime_error("no terminal to run on");
  }
  return line;
}

}  // namespace

Said run(const CommandLine& command) {
  if (command.on_a_terminal) return run_on_a_terminal(command);
  const Line out_line = a_pipe();
  const Line err_line = command.errors_on_a_terminal ? a_terminal() : a_pipe();
  if (command.reader_goes_away) close(out_line.ours);
  const pid_t child = fork();
  if (child < 0) throw std::runtime_error("no process");
  if (child == 0) {
    dup2(out_line.theirs, STDOUT_FILENO);
    dup2(err_line.theirs, STDERR_FILENO);
    for (const Line& line : {out_line, err_line}) {
      close(line.ours);
      close(line.theirs);
    }
    if (command.with_closed_output) close(STDOUT_FILENO);
    become(command);
  }
  close(out_line.theirs);
  close(err_line.theirs);
  Stream out{.descriptor = out_line.ours, .is_open = !command.reader_goes_away};
  Stream err{.descriptor = err_line.ours};
  listen_to(child, out, err, command.interrupt_at);
  if (!command.reader_goes_away) close(out.descriptor);
  close(err.descriptor);
  const int code = exit_code_of(child);
  return {.exit_code = code, .out = out.text, .err = err.text};
}

}  // namespace keenfall::journeys
