// `keenfall open` as a process of its own, asked over its socket and ended by signals.
#pragma once

#include "server/raw_client_test.h"

#include <chrono>
#include <cstdint>
#include <string>
#include <vector>

#include <sys/types.h>

namespace keenfall::journeys {

class ServedProgram {
 public:
  // words: what stands behind "open"; opened without a desktop.
  // runtime_folder: where it is found by another start; empty: nowhere.
  explicit ServedProgram(const std::vector<std::string>& words,
                         const std::string& runtime_folder = {});
  ServedProgram(const ServedProgram&) = delete;
  ServedProgram& operator=(const ServedProgram&) = delete;
  ServedProgram(ServedProgram&&) = delete;
  ServedProgram& operator=(ServedProgram&&) = delete;
  ~ServedProgram();  // kills it where it still runs

  [[nodiscard]] const std::string& line() const { return line_; }  // the first it printed
  [[nodiscard]] std::uint16_t port() const { return port_; }
  [[nodiscard]] const std::string& key() const { return key_; }
  [[nodiscard]] pid_t process() const { return child_; }

  // With the key, where it is one of the API.
  [[nodiscard]] server::testing::RawAnswer asked(const std::string& begin,
                                                 const std::string& body = "") const;

  struct Ended {
    int exit_code = -1;  // 128 + signal when a signal ended it
    std::string out;     // all it printed behind its first line
    std::chrono::milliseconds took{0};
  };
  Ended ended_by(int signal);
  Ended ended();  // by itself

 private:
  pid_t child_ = -1;
  int out_ = -1;
  std::string line_;
  std::uint16_t port_ = 0;
  std::string key_;
};

}  // namespace keenfall::journeys
