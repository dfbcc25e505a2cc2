// The shortest decimal text that reads back as the same number: "17", "0.38", "1e+30".
#pragma once

#include <string>

namespace keenfall::base {

[[nodiscard]] std::string plain_number(double number);

}  // namespace keenfall::base
