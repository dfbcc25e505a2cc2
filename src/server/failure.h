// What fails while a request is answered or work is done, and is nobody's slip: a notebook that is
// damaged, a full disk, a fault of our own. The one place of the server where exceptions end.
#pragma once

#include "server/refusal.h"

#include <functional>
#include <optional>

namespace keenfall::server {

// Does it; nothing where nothing was thrown.
[[nodiscard]] std::optional<Refusal> failure_of(const std::function<void()>& work);

}  // namespace keenfall::server
