#include "scale/port.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/eventfd.h>
#include <sys/file.h>
#include <termios.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <optional>
#include <system_error>
#include <utility>

namespace keenfall::scale {

namespace {

using base::Problem;
using base::ProblemKind;

constexpr auto kSpeeds = std::to_array<int>({300, 600, 1200, 2400, 4800, 9600, 19200});
constexpr auto kSystemSpeeds =
    std::to_array<speed_t>({B300, B600, B1200, B2400, B4800, B9600, B19200});
static_assert(kSpeeds.size() == kSystemSpeeds.size());

std::optional<speed_t> system_speed(int baud) {
  const auto found = std::ranges::find(kSpeeds, baud);
  if (found == kSpeeds.end()) return std::nullopt;
  return kSystemSpeeds.at(static_cast<std::size_t>(found - kSpeeds.begin()));
}

Problem trouble_with(const std::string& path, std::string sentence, std::string accepted) {
  return {.kind = ProblemKind::unreadable,
          .sentence = std::move(sentence),
          .place = {.file = path},
          .accepted = std::move(accepted)};
}

Problem no_such_device(const std::string& path) {
  return trouble_with(path,
                      "there is no such device",
                      "a scale that is plugged in and switched on; serial lines are named "
                      "/dev/serial/by-id/..., /dev/ttyUSB0, /dev/ttyACM0 or /dev/ttyS0");
}

Problem not_permitted(const std::string& path) {
  return trouble_with(path,
                      "this user may not read the device",
                      "on Debian a member of the group dialout: sudo adduser \"$USER\" dialout, "
                      "then log out and in again");
}

Problem no_serial_line(const std::string& path) {
  return trouble_with(path, "this is no serial line", "a device such as /dev/ttyUSB0");
}

Problem read_by_another(const std::string& path) {
  return trouble_with(path,
                      "another program reads this device, and two would each get half of it",
                      "closing the other program");
}

Problem own_terminal(const std::string& path) {
  return trouble_with(path,
                      "this is the terminal that Keenfall was started in, and no scale",
                      "a device such as /dev/ttyUSB0");
}

Problem of_opening(const std::string& path, int fault) {
  switch (fault) {
    case ENOENT:
    case ENODEV:
    case ENXIO:
    case ENOTDIR:
      return no_such_device(path);
    case EACCES:
    case EPERM:
      return not_permitted(path);
    case EBUSY:
      return read_by_another(path);
    case EIO:
      return trouble_with(path, "nothing is at the other end of this line", "a scale at that line");
    default:
      return trouble_with(
          path,
          "the device cannot be opened (" + std::generic_category().message(fault) + ")",
          "a serial line that works");
  }
}

// Bytes as they come: no echo, no lines, no flow control. Parity and frame are looked at, and what
// is damaged is marked (PARMRK), not turned into a zero or passed on as if it were right.
termios raw_line(termios line, speed_t speed, DataFormat format) {
  line.c_iflag = INPCK | PARMRK;
  line.c_oflag = 0;
  line.c_lflag = 0;
  line.c_cflag &= ~static_cast<tcflag_t>(CSIZE | CSTOPB | PARENB | PARODD | CRTSCTS);
  line.c_cflag |= CREAD | CLOCAL;
  line.c_cflag |= format == DataFormat::bits_8_no_parity ? static_cast<tcflag_t>(CS8)
                                                         : static_cast<tcflag_t>(CS7 | PARENB);
  line.c_cc[VMIN] = 1;  // so that an empty line is EAGAIN, and a read of nothing a hang-up
  line.c_cc[VTIME] = 0;
  cfsetispeed(&line, speed);
  cfsetospeed(&line, speed);
  return line;
}

}  // namespace

struct Port::Line {
  Line(int device_number, int bell_number) : device(device_number), bell(bell_number) {}
  Line(const Line&) = delete;
  Line& operator=(const Line&) = delete;
  Line(Line&&) = delete;
  Line& operator=(Line&&) = delete;
  ~Line() {
    if (is_changed) tcsetattr(device, TCSANOW, &as_found);
    close(device);
    if (bell >= 0) close(bell);
  }

  // 7E1 is asked for and not insisted on: where an adapter has no 7 bits, the parity bit arrives
  // with the byte, and line_bytes.h takes it off.
  [[nodiscard]] std::optional<Problem> set_up(const PortSettings& settings, speed_t speed) {
    if (tcgetattr(device, &as_found) != 0) return no_serial_line(settings.path);
    if (tcgetpgrp(device) >= 0) return own_terminal(settings.path);
    if (flock(device, LOCK_EX | LOCK_NB) != 0) return read_by_another(settings.path);
    const termios wanted = raw_line(as_found, speed, settings.format);
    termios taken{};
    is_changed = tcsetattr(device, TCSANOW, &wanted) == 0;
    const bool is_set = is_changed && tcgetattr(device, &taken) == 0 &&
                        cfgetispeed(&taken) == speed && taken.c_lflag == 0;
    if (!is_set) {
      return trouble_with(settings.path,
                          "the device does not take a speed of " + std::to_string(settings.baud),
                          "a speed that both the scale and its adapter can do");
    }
    tcflush(device, TCIFLUSH);  // what was sent while nobody read
    return std::nullopt;
  }

  int device;
  int bell;  // rung to stop waiting
  termios as_found{};
  bool is_changed = false;
};

std::span<const int> known_speeds() { return kSpeeds; }

base::Result<DataFormat> data_format_of(const std::string& text) {
  if (text == "8N1" || text == "8n1") return DataFormat::bits_8_no_parity;
  if (text == "7E1" || text == "7e1") return DataFormat::bits_7_even_parity;
  return base::failed({.sentence = "a data format is 8N1 or 7E1",
                       .place = {.found = text},
                       .accepted = "8N1 (8 bits, no parity), or 7E1 (7 bits, even parity)"});
}

base::Result<Port> Port::open(const PortSettings& settings) {
  const auto speed = system_speed(settings.baud);
  if (!speed) {
    return base::failed(
        {.sentence = "a speed of " + std::to_string(settings.baud) + " bits a second is not known",
         .place = {.file = settings.path},
         .accepted = "300, 600, 1200, 2400, 4800, 9600 or 19200"});
  }
  // Without O_NONBLOCK opening would wait for a modem.
  const int device = ::open(settings.path.c_str(), O_RDONLY | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
  if (device < 0) return base::failed(of_opening(settings.path, errno));
  auto line = std::make_unique<Line>(device, eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK));
  if (auto problem = line->set_up(settings, *speed)) return base::failed(*std::move(problem));
  return Port(std::move(line));
}

Port::Port(std::unique_ptr<Line> line) : line_(std::move(line)) {}
Port::Port(Port&&) noexcept = default;
Port& Port::operator=(Port&&) noexcept = default;
Port::~Port() = default;

PortEvent Port::read(std::string& into,
                     std::chrono::milliseconds at_most,
                     const std::stop_token& stop) {
  const int bell = line_->bell;
  const std::stop_callback ring(stop, [bell] {
    constexpr std::uint64_t kOnce = 1;
    [[maybe_unused]] const auto rung = ::write(bell, &kOnce, sizeof kOnce);
  });
  const int device = line_->device;
  std::array<pollfd, 2> waiting = {{{device, POLLIN, 0}, {bell, POLLIN, 0}}};
  const int ready = poll(waiting.data(), waiting.size(), static_cast<int>(at_most.count()));
  if (ready <= 0 || waiting[0].revents == 0) return PortEvent::nothing;
  std::array<char, 256> buffer{};
  const ssize_t count = ::read(device, buffer.data(), buffer.size());
  if (count > 0) {
    into.append(buffer.data(), static_cast<std::size_t>(count));
    return PortEvent::heard;
  }
  const bool is_nothing_yet = count < 0 && (errno == EAGAIN || errno == EINTR);
  const bool is_hung_up = (waiting[0].revents & (POLLHUP | POLLERR | POLLNVAL)) != 0;
  return is_nothing_yet && !is_hung_up ? PortEvent::nothing : PortEvent::gone;
}

}  // namespace keenfall::scale
