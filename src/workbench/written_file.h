// A file written whole or not at all, and on the disk when that is said.
#pragma once

#include "base/result.h"
#include "workbench/lasting_name.h"

#include <optional>
#include <string>

namespace keenfall::workbench {

// Nothing when it was written; else why not. With `is_kept` a file that exists is not touched, nor
// one that comes meanwhile. No other file is touched either: until it is whole it lies beside under
// a name that nothing has.
[[nodiscard]] std::optional<base::Problem> write_whole_file(const std::string& path,
                                                            const std::string& content,
                                                            Existing existing);

// Why no new file can be written there, as far as can be seen before there is anything to write;
// nothing where it may work.
[[nodiscard]] std::optional<base::Problem> problem_with_new_file(const std::string& path);

}  // namespace keenfall::workbench
