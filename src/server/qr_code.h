// A text as a QR code (ISO/IEC 18004), by libqrencode: for a camera, so that nobody types it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::server {

// Row by row, "1" dark and "0" light, without the light margin of four that belongs around it.
// Error correction M. Nothing where the text is longer than a code holds (2,331 bytes).
[[nodiscard]] std::vector<std::string> qr_code(const std::string& text);

// For a terminal with a dark ground or a light one: two rows of squares in a line of text, with the
// margin, light squares drawn. Ends with a new line.
[[nodiscard]] std::string qr_drawn(const std::vector<std::string>& squares);

}  // namespace keenfall::server
