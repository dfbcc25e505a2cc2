#include "wire/revision_text.h"

#include "notebook/digest.h"

#include <cstddef>

namespace keenfall::wire {

std::string revision_of_told(const Json& object) {
  constexpr std::size_t kDigits = 16;
  return notebook::in_hex(notebook::sha256_of(in_one_line(object))).substr(0, kDigits);
}

}  // namespace keenfall::wire
