// A serial line whose other end is held by a test: what is sent there arrives at `path`.
#pragma once

#include <fcntl.h>
#include <unistd.h>

#include <cstddef>
#include <cstdlib>
#include <stdexcept>
#include <string>

namespace keenfall::scale::testing {

class PseudoTerminal {
 public:
  PseudoTerminal() : master_(posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC)) {
    const bool is_made = master_ >= 0 && grantpt(master_) == 0 && unlockpt(master_) == 0;
    const char* name = is_made ? ptsname(master_) : nullptr;
    if (name == nullptr) throw std::runtime_error("no pseudo-terminal can be had");
    path_ = name;
  }
  PseudoTerminal(const PseudoTerminal&) = delete;
  PseudoTerminal& operator=(const PseudoTerminal&) = delete;
  PseudoTerminal(PseudoTerminal&&) = delete;
  PseudoTerminal& operator=(PseudoTerminal&&) = delete;
  ~PseudoTerminal() { unplug(); }

  [[nodiscard]] const std::string& path() const { return path_; }

  void send(const std::string& bytes) const {
    std::size_t sent = 0;
    while (sent < bytes.size()) {
      const ssize_t count = write(master_, bytes.data() + sent, bytes.size() - sent);
      if (count <= 0) throw std::runtime_error("nothing can be sent");
      sent += static_cast<std::size_t>(count);
    }
  }

  void unplug() {
    if (master_ >= 0) close(master_);
    master_ = -1;
  }

 private:
  int master_;
  std::string path_;
};

}  // namespace keenfall::scale::testing
