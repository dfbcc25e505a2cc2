#include "cli/open_sign.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstddef>
#include <cstring>
#include <filesystem>
#include <map>
#include <optional>
#include <string_view>
#include <system_error>
#include <utility>

#include <poll.h>
#include <sys/eventfd.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/time.h>
#include <sys/un.h>
#include <unistd.h>

namespace keenfall::cli {

namespace {

constexpr std::string_view kFolderOfSigns = "keenfall";
constexpr std::string_view kOwnAddress = "http://127.0.0.1:";

// Nobody else may enter it, so nobody else can put a sign there or come to one.
bool is_of_this_user_alone(const std::string& folder) {
  constexpr mode_t kForOthers = S_IRWXG | S_IRWXO;
  struct stat facts {};
  return lstat(folder.c_str(), &facts) == 0 && S_ISDIR(facts.st_mode) &&
         facts.st_uid == geteuid() && (facts.st_mode & kForOthers) == 0;
}

// Empty where signs cannot be trusted.
std::string folder_of_signs(const std::string& runtime_folder) {
  if (runtime_folder.empty() || !is_of_this_user_alone(runtime_folder)) return {};
  return runtime_folder + "/" + std::string(kFolderOfSigns);
}

std::optional<sockaddr_un> socket_address(const std::string& path) {
  sockaddr_un address{.sun_family = AF_UNIX, .sun_path = {}};
  if (path.size() >= sizeof(address.sun_path)) return std::nullopt;
  std::ranges::copy(path, static_cast<char*>(address.sun_path));
  return address;
}

const sockaddr* as_any(const sockaddr_un& address) {
  // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): how sockets take every address
  return reinterpret_cast<const sockaddr*>(&address);
}

bool is_this_user(int connection) {
  ucred peer{};
  socklen_t length = sizeof(peer);
  return getsockopt(connection, SOL_SOCKET, SO_PEERCRED, &peer, &length) == 0 &&
         peer.uid == geteuid();
}

// A short text, which the connection takes in without waiting.
void tell(int connection, const OpenNow& now) {
  if (!is_this_user(connection)) return;
  const std::string text = now.address + "\n" + now.notebook;
  (void)send(connection, text.data(), text.size(), MSG_NOSIGNAL | MSG_DONTWAIT);
}

void tell_all_who_ask(int listening, int ending, const std::function<OpenNow()>& told) {
  while (true) {
    std::array<pollfd, 2> waiting = {{{listening, POLLIN, 0}, {ending, POLLIN, 0}}};
    const bool is_woken = poll(waiting.data(), waiting.size(), -1) > 0;
    if (!is_woken) continue;
    if (waiting[1].revents != 0) return;
    const int connection = accept4(listening, nullptr, nullptr, SOCK_CLOEXEC);
    if (connection < 0 && errno != EINTR && errno != ECONNABORTED) return;
    if (connection < 0) continue;
    tell(connection, told());
    close(connection);
  }
}

// A socket that listens there, or -1.
int listening_at(const std::string& path) {
  constexpr int kWaiting = 8;
  const auto address = socket_address(path);
  if (!address) return -1;
  const int listening = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
  if (listening < 0) return -1;
  unlink(path.c_str());  // of a Keenfall that had this port and was killed
  const bool listens =
      bind(listening, as_any(*address), sizeof(*address)) == 0 && listen(listening, kWaiting) == 0;
  if (listens) return listening;
  close(listening);
  return -1;
}

std::string all_said_by(int connection) {
  constexpr std::size_t kMost = 16 * 1024;
  std::string text;
  std::array<char, 4096> some{};
  while (text.size() < kMost) {
    const ssize_t count = read(connection, some.data(), some.size());
    if (count < 0) return {};
    if (count == 0) break;
    text.append(some.data(), static_cast<std::size_t>(count));
  }
  return text;
}

std::string said_at(const std::string& path) {
  constexpr timeval kPatience{.tv_sec = 1, .tv_usec = 0};
  const auto address = socket_address(path);
  if (!address) return {};
  const int connection = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
  if (connection < 0) return {};
  setsockopt(connection, SOL_SOCKET, SO_RCVTIMEO, &kPatience, sizeof(kPatience));
  setsockopt(connection, SOL_SOCKET, SO_SNDTIMEO, &kPatience, sizeof(kPatience));
  std::string text;
  if (connect(connection, as_any(*address), sizeof(*address)) == 0) text = all_said_by(connection);
  close(connection);
  return text;
}

}  // namespace

OpenSign::OpenSign(const std::string& runtime_folder,
                   std::uint16_t port,
                   std::function<OpenNow()> told) {
  const std::string folder = folder_of_signs(runtime_folder);
  if (folder.empty()) return;
  mkdir(folder.c_str(), S_IRWXU);
  path_ = folder + "/" + std::to_string(port);
  ending_ = eventfd(0, EFD_CLOEXEC);
  if (ending_ >= 0) listening_ = listening_at(path_);
  if (listening_ < 0) return;
  teller_ = std::thread([listening = listening_, ending = ending_, told = std::move(told)] {
    tell_all_who_ask(listening, ending, told);
  });
}

OpenSign::~OpenSign() {
  if (teller_.joinable()) {
    unlink(path_.c_str());
    (void)eventfd_write(ending_, 1);
    teller_.join();
  }
  if (listening_ >= 0) close(listening_);
  if (ending_ >= 0) close(ending_);
}

std::vector<OpenNow> open_now(const std::string& runtime_folder) {
  const std::string folder = folder_of_signs(runtime_folder);
  if (folder.empty()) return {};
  std::map<std::string, OpenNow> by_port;
  std::error_code fault;
  const std::filesystem::directory_iterator end_of_folder;
  for (std::filesystem::directory_iterator entry(folder, fault); !fault && entry != end_of_folder;
       entry.increment(fault)) {
    const std::string text = said_at(entry->path().string());
    const std::size_t end = text.find('\n');
    if (!text.starts_with(kOwnAddress) || end == std::string::npos) continue;
    by_port[entry->path().filename().string()] = {.address = text.substr(0, end),
                                                  .notebook = text.substr(end + 1)};
  }
  std::vector<OpenNow> all;
  for (auto& [port, now] : by_port) all.push_back(std::move(now));
  return all;
}

}  // namespace keenfall::cli
