#include "cli/desktop.h"

#include <array>
#include <cstdlib>

#include <fcntl.h>
#include <spawn.h>
#include <unistd.h>

namespace keenfall::cli {

namespace {

bool is_said(const char* variable) {
  const char* text = std::getenv(variable);
  return text != nullptr && *text != '\0';
}

}  // namespace

bool has_desktop() { return is_said("DISPLAY") || is_said("WAYLAND_DISPLAY"); }

bool show_on_desktop(const std::string& address) {
  std::string program = "xdg-open";
  std::string word = address;
  const std::array<char*, 3> words = {program.data(), word.data(), nullptr};
  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    posix_spawn_file_actions_addopen(&files, stream, "/dev/null", O_RDWR, 0);
  }
  // A session of its own: Ctrl-C here does not end the browser.
  posix_spawnattr_t attributes;
  posix_spawnattr_init(&attributes);
  posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSID);
  pid_t child = -1;
  const int fault =
      posix_spawnp(&child, program.c_str(), &files, &attributes, words.data(), environ);
  posix_spawnattr_destroy(&attributes);
  posix_spawn_file_actions_destroy(&files);
  return fault == 0;
}

}  // namespace keenfall::cli
