// A serial line, or a USB adapter that is one: opened, read, told when it is gone.
//
// In: the path of the device, speed and data format. Nothing is ever sent to it. Out: bytes as they
// arrive, damaged ones marked by a byte 0xFF before them (line_bytes.h refuses those). Opening
// fails, with what to do, where there is no such device, where it is no serial line, where it may
// not be read, where another program reads it, and where it does not take the speed. The line is
// locked (flock) while it is open: the system takes that lock away with the process, however it
// ends. TIOCEXCL is not used, since it stays for as long as anybody else has the line open.
#pragma once

#include "base/result.h"

#include <chrono>
#include <memory>
#include <span>
#include <stop_token>
#include <string>

namespace keenfall::scale {

enum class DataFormat {
  bits_8_no_parity,   // 8N1
  bits_7_even_parity  // 7E1
};

struct PortSettings {
  std::string path;  // /dev/ttyUSB0, or better /dev/serial/by-id/..., which stays the same
  int baud = 9600;   // one of known_speeds()
  DataFormat format = DataFormat::bits_8_no_parity;

  bool operator==(const PortSettings&) const = default;
};

// 300 to 19200 bits a second.
[[nodiscard]] std::span<const int> known_speeds();

// "8N1" or "7E1", in either case.
[[nodiscard]] base::Result<DataFormat> data_format_of(const std::string& text);

enum class PortEvent {
  heard,    // bytes came
  nothing,  // none in that time, or it was asked to stop
  gone      // unplugged or hung up: this port gives nothing any more
};

class Port {
 public:
  [[nodiscard]] static base::Result<Port> open(const PortSettings& settings);

  Port(Port&&) noexcept;
  Port& operator=(Port&&) noexcept;
  Port(const Port&) = delete;
  Port& operator=(const Port&) = delete;
  ~Port();  // the line is left as it was found, where it is still there

  // Waits for bytes and appends them to `into`. Returns at once when it is asked to stop.
  [[nodiscard]] PortEvent read(std::string& into,
                               std::chrono::milliseconds at_most,
                               const std::stop_token& stop);

 private:
  struct Line;
  explicit Port(std::unique_ptr<Line> line);

  std::unique_ptr<Line> line_;
};

}  // namespace keenfall::scale
