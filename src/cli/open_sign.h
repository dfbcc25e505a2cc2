// The sign of an open Keenfall, by which another start of it by the same person finds it: a socket
// in that person's own runtime folder that tells whoever connects where the pages are and which
// notebook is open.
//
// The address holds the key. So it is told to processes of the same user only, the folder must be
// nobody else's, and nothing of it is written to a disk. Where a sign cannot be put up there is
// none, and a second start serves beside the first.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <thread>
#include <vector>

namespace keenfall::cli {

struct OpenNow {
  std::string address;   // with the key
  std::string notebook;  // its whole path; empty: none is open

  bool operator==(const OpenNow&) const = default;
};

class OpenSign {
 public:
  // runtime_folder: as XDG_RUNTIME_DIR names it; empty: no sign. port: that of the address, which
  // no other sign of this machine has. told: asked in a thread of the sign's own; must not throw.
  OpenSign(const std::string& runtime_folder, std::uint16_t port, std::function<OpenNow()> told);
  OpenSign(const OpenSign&) = delete;
  OpenSign& operator=(const OpenSign&) = delete;
  OpenSign(OpenSign&&) = delete;
  OpenSign& operator=(OpenSign&&) = delete;
  ~OpenSign();  // takes it down

 private:
  std::string path_;
  int listening_ = -1;
  int ending_ = -1;  // can be read from once it is to end
  std::thread teller_;
};

// What the signs in that folder tell, by port. Those whose Keenfall was killed, and those that do
// not answer within a second, tell nothing.
[[nodiscard]] std::vector<OpenNow> open_now(const std::string& runtime_folder);

}  // namespace keenfall::cli
