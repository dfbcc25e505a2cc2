#include "server/door.h"

namespace keenfall::server {

std::string origin_of(const OwnAddress& own) {
  const std::string scheme = own.is_encrypted ? "https://" : "http://";
  return scheme + own.hosts.front() + ":" + std::to_string(own.port);
}

}  // namespace keenfall::server
