// Showing a page in the browser of whoever sits here.
#pragma once

#include <string>

namespace keenfall::cli {

// Of this process: a graphical session, as DISPLAY or WAYLAND_DISPLAY says.
[[nodiscard]] bool has_desktop();

// By xdg-open, which is not waited for. False where it cannot be begun.
bool show_on_desktop(const std::string& address);

}  // namespace keenfall::cli
