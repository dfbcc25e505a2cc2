#include "cli/desktop.h"

#include <array>
#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string_view>
#include <system_error>

#include <fcntl.h>
#include <spawn.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace keenfall::cli {

namespace {

bool is_said(const char* variable) {
  const char* text = std::getenv(variable);
  return text != nullptr && *text != '\0';
}

// What our addresses are made of; nothing of it means anything in HTML.
bool is_plain_address(const std::string& address) {
  constexpr std::string_view kPlain =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789:/.#=_-";
  return address.find_first_not_of(kPlain) == std::string::npos;
}

std::string page_that_leads_to(const std::string& address) {
  return "<!doctype html>\n<meta charset=\"utf-8\">\n<meta name=\"referrer\" "
         "content=\"no-referrer\">\n"
         "<title>Keenfall</title>\n<meta http-equiv=\"refresh\" content=\"0; url=" +
         address + "\">\n<p><a href=\"" + address + "\">Keenfall</a></p>\n";
}

// Made for this user alone; nothing where it cannot be.
std::optional<std::string> new_folder_in(const std::string& folder) {
  if (folder.empty()) return std::nullopt;
  std::string name = folder + "/keenfall-shows-XXXXXX";
  if (mkdtemp(name.data()) == nullptr) return std::nullopt;
  return name;
}

std::optional<std::string> new_private_folder(const std::string& runtime_folder) {
  if (auto folder = new_folder_in(runtime_folder)) return folder;
  std::error_code fault;
  const auto temporary = std::filesystem::temp_directory_path(fault);
  return fault ? std::nullopt : new_folder_in(temporary.string());
}

bool written_for_this_user(const std::string& path, const std::string& text) {
  const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, S_IRUSR | S_IWUSR);
  if (file < 0) return false;
  const bool is_whole = write(file, text.data(), text.size()) == static_cast<ssize_t>(text.size());
  close(file);
  return is_whole;
}

// By a shell that ends at once and leaves both to the system.
bool shown_and_removed_later(const std::string& file,
                             const std::string& folder,
                             std::chrono::seconds kept) {
  std::string shell = "/bin/sh";
  std::string option = "-c";
  std::string script = "{ sleep \"$2\"; rm -f -- \"$0\"; rmdir -- \"$1\"; } & xdg-open \"$0\" &";
  std::string file_word = file;
  std::string folder_word = folder;
  std::string seconds = std::to_string(kept.count());
  const std::array<char*, 7> words = {shell.data(),
                                      option.data(),
                                      script.data(),
                                      file_word.data(),
                                      folder_word.data(),
                                      seconds.data(),
                                      nullptr};
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
  const int fault = posix_spawn(&child, shell.c_str(), &files, &attributes, words.data(), environ);
  posix_spawnattr_destroy(&attributes);
  posix_spawn_file_actions_destroy(&files);
  if (fault != 0) return false;
  int status = 0;
  while (waitpid(child, &status, 0) < 0 && errno == EINTR) continue;
  return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

}  // namespace

bool has_desktop() { return is_said("DISPLAY") || is_said("WAYLAND_DISPLAY"); }

bool show_on_desktop(const std::string& address,
                     const std::string& runtime_folder,
                     std::chrono::seconds kept) {
  if (!is_plain_address(address)) return false;
  const auto folder = new_private_folder(runtime_folder);
  if (!folder) return false;
  const std::string file = *folder + "/keenfall.html";
  if (written_for_this_user(file, page_that_leads_to(address)) &&
      shown_and_removed_later(file, *folder, kept)) {
    return true;
  }
  std::error_code ignored;
  std::filesystem::remove_all(*folder, ignored);
  return false;
}

}  // namespace keenfall::cli
