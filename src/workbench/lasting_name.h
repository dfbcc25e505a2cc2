// Giving what was made under a name of its own the name it is to have, so that both are on the disk
// afterwards: the last step of writing "as a whole or not at all".
#pragma once

#include <filesystem>
#include <system_error>

namespace keenfall::workbench {

enum class Existing { is_replaced, is_kept };

// Of a file or folder; the folder that the name lies in is synced. With `is_kept` nothing that has
// the name is replaced, also if it came just then: that is std::errc::file_exists.
[[nodiscard]] std::error_code give_lasting_name(const std::filesystem::path& from,
                                                const std::filesystem::path& to,
                                                Existing existing);

// That the names in a folder are on the disk. Where a folder cannot be opened or synced at all, as
// on some shared disks, nothing more can be done, and that is no error.
[[nodiscard]] std::error_code sync_folder(const std::filesystem::path& folder);

}  // namespace keenfall::workbench
