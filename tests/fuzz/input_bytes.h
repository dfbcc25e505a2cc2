// A fuzz input taken piece by piece: numbers and texts whose lengths it states itself. Past its end
// there are zeros and empty texts.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace keenfall::fuzz {

class InputBytes {
 public:
  explicit InputBytes(std::string_view bytes) : rest_(bytes) {}

  [[nodiscard]] bool is_at_end() const { return rest_.empty(); }
  [[nodiscard]] std::string_view rest() const { return rest_; }

  // Of `count` bytes (at most 8), the highest first.
  std::uint64_t number(int count) {
    std::uint64_t value = 0;
    for (int i = 0; i < count; ++i) value = value << 8U | byte();
    return value;
  }

  // Below `limit`, which is at least 1.
  std::size_t place(std::size_t limit) { return static_cast<std::size_t>(byte()) % limit; }

  // A length byte, then so many bytes.
  std::string text() {
    const std::size_t stated = byte();
    const std::size_t length = std::min(stated, rest_.size());
    std::string taken(rest_.substr(0, length));
    rest_.remove_prefix(length);
    return taken;
  }

 private:
  std::uint8_t byte() {
    if (rest_.empty()) return 0;
    const auto value = static_cast<std::uint8_t>(rest_.front());
    rest_.remove_prefix(1);
    return value;
  }

  std::string_view rest_;
};

}  // namespace keenfall::fuzz
