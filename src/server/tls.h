// What a door needs to speak TLS. Private to the folder.
#pragma once

#include "base/result.h"
#include "server/door.h"

#include <boost/asio/ssl/context.hpp>

namespace keenfall::server {

// TLS 1.2 or later. Fails where a file cannot be read, or the key is not the certificate's.
[[nodiscard]] base::Result<boost::asio::ssl::context> tls_with(const Certificate& certificate);

}  // namespace keenfall::server
