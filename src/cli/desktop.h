// Showing a page in the browser of whoever sits here.
#pragma once

#include <chrono>
#include <string>

namespace keenfall::cli {

// Of this process: a graphical session, as DISPLAY or WAYLAND_DISPLAY says.
[[nodiscard]] bool has_desktop();

// By xdg-open, which is not waited for. What a program is begun with can be read by all users of a
// machine, and an address may hold a key: so xdg-open is given a file for this user alone, which
// leads there and is removed after a while. It lies in a folder of its own in `runtime_folder`, or
// in that for temporary files where this is empty or cannot be written.
// False where it cannot be begun.
bool show_on_desktop(const std::string& address,
                     const std::string& runtime_folder,
                     std::chrono::seconds kept = std::chrono::minutes(5));

}  // namespace keenfall::cli
