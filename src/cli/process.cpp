#include "cli/process.h"

#include "cli/desktop.h"
#include "cli/interruption.h"
#include "cli/open_command.h"
#include "cli/program.h"
#include "cli/terminal.h"
#include "workbench/notebook_trouble.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <exception>
#include <filesystem>
#include <new>
#include <string>
#include <system_error>
#include <thread>
#include <vector>

#include <pwd.h>
#include <unistd.h>

namespace keenfall::cli {

namespace {

double seconds_on_the_steady_clock() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

void write_to_standard_output(const std::string& text) {
  (void)std::fwrite(text.data(), 1, text.size(), stdout);
  (void)std::fflush(stdout);
}

bool is_standard_output_gone() { return std::ferror(stdout) != 0; }

void write_to_standard_error(const std::string& text) {
  (void)std::fwrite(text.data(), 1, text.size(), stderr);
  (void)std::fflush(stderr);
}

// Whatever threads still do; nothing that is kept depends on it.
void end_with(const std::string& last_words) {
  write_to_standard_output(last_words);
  std::_Exit(static_cast<int>(ExitCode::answered));
}

std::string utc_by_the_clock() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  gmtime_r(&now, &parts);
  std::array<char, 32> text{};
  const std::size_t length = std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%SZ", &parts);
  return {text.data(), length};
}

std::string login_name() {
  const passwd* person = getpwuid(geteuid());
  return person == nullptr ? "user " + std::to_string(geteuid()) : std::string(person->pw_name);
}

std::string machine_words() {
  std::array<char, 256> name{};
  const bool is_known = gethostname(name.data(), name.size() - 1) == 0;
  return (is_known ? std::string(name.data()) : std::string("this machine")) + ", process " +
         std::to_string(getpid());
}

std::string working_folder() {
  std::error_code fault;
  return std::filesystem::current_path(fault).string();
}

// Made at login, for this user alone; empty where there is none.
std::string runtime_folder() {
  const char* folder = std::getenv("XDG_RUNTIME_DIR");
  return folder == nullptr ? std::string() : std::string(folder);
}

// As the XDG Base Directory Specification says; empty where there is no home.
std::string state_folder() {
  const char* folder = std::getenv("XDG_STATE_HOME");
  if (folder != nullptr && *folder == '/') return folder;
  const char* home = std::getenv("HOME");
  return home == nullptr ? std::string() : std::string(home) + "/.local/state";
}

Surroundings surroundings_of_this_process(const UseCases& use_cases) {
  Surroundings surroundings{.look = look_for(facts_of_standard_output()),
                            .use_cases = use_cases,
                            .is_stop_asked_for = is_interrupted,
                            .seconds_now = seconds_on_the_steady_clock,
                            .threads_at_hand = std::thread::hardware_concurrency(),
                            .program_version = KEENFALL_VERSION,
                            .utc_now = utc_by_the_clock,
                            .login_name = login_name(),
                            .machine_words = machine_words(),
                            .working_folder = working_folder(),
                            .runtime_folder = runtime_folder(),
                            .state_folder = state_folder(),
                            .write_at_once = write_to_standard_output,
                            .is_output_gone = is_standard_output_gone,
                            .wait_for_stop = wait_until_interrupted,
                            .ask_for_stop = interrupt,
                            .end_at_once = end_with};
  if (has_desktop()) {
    surroundings.show_on_desktop = [folder = runtime_folder()](const std::string& address) {
      return show_on_desktop(address, folder);
    };
  }
  if (standard_error_is_a_terminal()) surroundings.write_progress = write_to_standard_error;
  return surroundings;
}

// A reader that went away ("| head") or a closed output is nobody's fault; a full disk is said.
ExitCode delivered(const Outcome& outcome) {
  errno = 0;
  const std::size_t written = std::fwrite(outcome.out.data(), 1, outcome.out.size(), stdout);
  const bool is_complete = written == outcome.out.size() && std::fflush(stdout) == 0;
  const int fault = errno;
  write_to_standard_error(outcome.err);
  if (is_complete || fault == EPIPE || fault == EBADF) return outcome.code;
  write_to_standard_error(std::string("Standard output cannot be written: ") +
                          std::strerror(fault) + ".\n");
  return ExitCode::file_trouble;
}

ExitCode our_fault(const std::string& what) {
  write_to_standard_error("This is a fault in Keenfall, not in what you gave it: " + what +
                          ". Nothing was judged.\n");
  return ExitCode::our_fault;
}

ExitCode run(const std::vector<std::string>& words, const UseCases& use_cases) {
  try {
    return delivered(run_program(words, surroundings_of_this_process(use_cases)));
  } catch (const std::bad_alloc&) {
    write_to_standard_error("There is not enough memory for this.\n");
    return ExitCode::not_usable;
  } catch (const workbench::NotebookTrouble& trouble) {
    write_to_standard_error(std::string(trouble.what()) + "\n");
    return ExitCode::file_trouble;
  } catch (const std::exception& error) {
    return our_fault(error.what());
  }
}

}  // namespace

int run_as_process(int argument_count, char** arguments, const UseCases& use_cases) {
  (void)std::signal(SIGPIPE, SIG_IGN);
  listen_for_interruption();
  const std::vector<std::string> words(arguments + (argument_count > 0 ? 1 : 0),
                                       arguments + argument_count);
  if (!words.empty() && words.front() == "open") listen_for_termination();
  const ExitCode code = run(words, use_cases);
  if (code != ExitCode::answered && std::ranges::find(words, kOwnWindow) != words.end()) {
    write_to_standard_error("\nPress Enter to close this window.\n");
    wait_for_enter();
  }
  return static_cast<int>(code);
}

}  // namespace keenfall::cli
