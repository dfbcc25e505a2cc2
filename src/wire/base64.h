// Bytes written as text: base64 with the usual alphabet and its padding (RFC 4648, section 4).
// Private to this folder.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::wire {

// Nothing where the text is not such: another character, a length that cannot be, bits left over.
[[nodiscard]] std::optional<std::string> bytes_from_base64(std::string_view text);

}  // namespace keenfall::wire
