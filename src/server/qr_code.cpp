#include "server/qr_code.h"

#include <qrencode.h>

#include <cstddef>
#include <memory>
#include <span>

namespace keenfall::server {

std::vector<std::string> qr_code(const std::string& text) {
  const std::unique_ptr<QRcode, void (*)(QRcode*)> code(
      QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M), QRcode_free);
  if (!code) return {};
  const auto width = static_cast<std::size_t>(code->width);
  const std::span<const unsigned char> data(code->data, width * width);
  std::vector<std::string> rows;
  for (std::size_t row = 0; row < width; ++row) {
    std::string squares;
    for (const unsigned char square : data.subspan(row * width, width)) {
      const bool is_dark = (square & 1U) != 0;
      squares += is_dark ? '1' : '0';
    }
    rows.push_back(std::move(squares));
  }
  return rows;
}

std::string qr_drawn(const std::vector<std::string>& squares) {
  constexpr std::size_t kMargin = 4;
  const std::size_t side = squares.size() + 2 * kMargin;
  const auto is_light = [&](std::size_t row, std::size_t column) {
    const bool is_margin =
        row < kMargin || column < kMargin || row >= side - kMargin || column >= side - kMargin;
    return is_margin || squares[row - kMargin][column - kMargin] == '0';
  };
  std::string drawn;
  for (std::size_t row = 0; row < side; row += 2) {
    for (std::size_t column = 0; column < side; ++column) {
      const bool upper = is_light(row, column);
      const bool lower = row + 1 < side && is_light(row + 1, column);
      drawn += upper ? (lower ? "█" : "▀") : (lower ? "▄" : " ");
    }
    drawn += '\n';
  }
  return drawn;
}

}  // namespace keenfall::server
