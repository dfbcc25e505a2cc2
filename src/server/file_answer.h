// A file that was made, as an answer that a browser saves under its name.
#pragma once

#include "server/http_message.h"

#include <string>

namespace keenfall::server {

struct MadeFile {
  std::string name;  // "spring.csv"; may hold anything; what is longer than 150 bytes is cut
  std::string content_type;
  std::string bytes;
};

[[nodiscard]] HttpResponse file_answer(MadeFile file);

}  // namespace keenfall::server
