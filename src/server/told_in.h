// In which units a request wants to be told: the header X-Keenfall-Told-In, "N,in". Without it all
// is told as it was recorded.
#pragma once

#include "base/result.h"
#include "materials/told_in.h"
#include "server/http_message.h"

namespace keenfall::server {

[[nodiscard]] base::Result<materials::ToldIn> told_in_of(const HttpRequest& request);

}  // namespace keenfall::server
