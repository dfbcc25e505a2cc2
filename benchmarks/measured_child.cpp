#include "benchmarks/measured_child.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <sstream>
#include <string_view>
#include <system_error>

namespace keenfall::benchmarks {

namespace {

constexpr int kNotDone = 1;
constexpr int kNotStarted = 127;

void write_whole(int to, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(to, text.data(), text.size());
    if (written <= 0) return;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
}

std::string read_whole(int from) {
  std::string text;
  std::array<char, 4096> some{};
  ssize_t count = 0;
  while ((count = ::read(from, some.data(), some.size())) > 0) {
    text.append(some.data(), static_cast<std::size_t>(count));
  }
  return text;
}

double seconds_of(const timeval& time) {
  return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

base::Problem not_measured(const std::string& why) {
  return {.kind = base::ProblemKind::unsuitable_data, .sentence = "Not measured: " + why};
}

base::Result<Findings> findings_in(const std::string& report) {
  Findings findings;
  std::istringstream lines(report);
  std::string line;
  while (std::getline(lines, line)) {
    std::istringstream words(line);
    std::string name;
    double number = 0;
    if (!(words >> name >> number)) return base::failed(not_measured("it reported " + line));
    findings[name] = number;
  }
  return findings;
}

// `child` gets the end of a pipe to report to and never returns.
base::Result<Measured> measured(const std::function<void(int report_to)>& child) {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0) return base::failed(not_measured("there is no pipe to be had."));
  (void)std::fflush(nullptr);
  const auto began = std::chrono::steady_clock::now();
  const pid_t id = ::fork();
  if (id < 0) return base::failed(not_measured("no process can be started."));
  if (id == 0) {
    ::close(ends[0]);
    child(ends[1]);
    ::_exit(kNotDone);
  }
  ::close(ends[1]);
  const std::string report = read_whole(ends[0]);
  ::close(ends[0]);
  int status = 0;
  rusage used{};
  if (::wait4(id, &status, 0, &used) != id) return base::failed(not_measured("its end was lost."));
  const std::chrono::duration<double> wall = std::chrono::steady_clock::now() - began;
  if (!WIFEXITED(status) || WEXITSTATUS(status) != 0) {
    return base::failed(not_measured("the work failed; what it said stands above."));
  }
  auto findings = findings_in(report);
  if (!findings) return base::failed(findings.error());
  return Measured{.cpu_s = seconds_of(used.ru_utime) + seconds_of(used.ru_stime),
                  .wall_s = wall.count(),
                  .peak_memory_mb = static_cast<double>(used.ru_maxrss) * 1024 / 1e6,  // of KiB
                  .findings = std::move(*findings)};
}

// The program takes this process over, with its standard output to the file that is open.
void become(const std::vector<std::string>& words, int output) {
  std::vector<std::string> kept = words;
  std::vector<char*> arguments;
  arguments.reserve(kept.size() + 1);
  for (std::string& word : kept) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  if (::dup2(output, STDOUT_FILENO) < 0) ::_exit(kNotStarted);
  ::execvp(arguments.front(), arguments.data());
  ::_exit(kNotStarted);
}

}  // namespace

base::Result<Measured> measured_work(const std::function<Findings()>& work) {
  return measured([&work](int report_to) {
    try {
      std::string report;
      for (const auto& [name, number] : work()) report += fmt::format("{} {}\n", name, number);
      write_whole(report_to, report);
    } catch (const std::exception& error) {
      fmt::print(stderr, "{}\n", error.what());
      ::_exit(kNotDone);
    }
    ::_exit(0);
  });
}

base::Result<Measured> measured_program(const std::vector<std::string>& words) {
  return measured([&words](int report_to) { become(words, report_to); });
}

base::Result<Measured> measured_program(const std::vector<std::string>& words,
                                        const std::filesystem::path& output) {
  return measured([&](int /*report_to*/) {
    constexpr mode_t kOwnerOnly = 0600;
    become(words, ::open(output.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, kOwnerOnly));
  });
}

bool is_on_path(const std::string& program) {
  const char* const path = std::getenv("PATH");  // NOLINT(concurrency-mt-unsafe): one thread
  std::istringstream folders(path == nullptr ? "" : path);
  std::string folder;
  while (std::getline(folders, folder, ':')) {
    if (::access((std::filesystem::path(folder) / program).c_str(), X_OK) == 0) return true;
  }
  return false;
}

}  // namespace keenfall::benchmarks
