// Identities by which the same thing is known again in another notebook.
#pragma once

#include <string>

namespace keenfall::notebook {

// 128 random bits of the machine's, as 32 hexadecimal digits.
[[nodiscard]] std::string random_uid();

}  // namespace keenfall::notebook
