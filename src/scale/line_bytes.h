// The bytes of a line as text: parity bits taken off, line ends and control characters at its ends
// dropped.
//
// A scale that sends 7 data bits and a parity bit, read as 8 bits, sets the high bit of some bytes.
// They are taken off where they are a parity bit throughout (even, odd, or always set), line ends
// included; where they are not, the line was damaged or is no ASCII, and is refused. So is a byte
// 0xFF, by which the system marks what it received damaged (termios, PARMRK), and a control
// character within the text.
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace keenfall::scale {

[[nodiscard]] base::Result<std::string> text_of_bytes(std::string_view bytes);

}  // namespace keenfall::scale
