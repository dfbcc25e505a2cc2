#include "notebook/random_uid.h"

#include "notebook/digest.h"
#include "notebook/notebook_failure.h"

#include <openssl/rand.h>

#include <array>
#include <cstdint>

namespace keenfall::notebook {

std::string random_uid() {
  std::array<std::uint8_t, 16> bytes{};
  if (RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) != 1) {
    throw NotebookFailure("this machine gives no random numbers to make an identity of");
  }
  return in_hex(bytes);
}

}  // namespace keenfall::notebook
